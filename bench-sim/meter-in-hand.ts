// SPDX-License-Identifier: MIT
// The meter of the virtual person, taken in hand for a calibration and put away again. While it is away the car is
// passed through as it is. It knows no messages.
import type { Meter } from '#core/calibration/meter';
import { drawParameters } from './physics/population.ts';
import { VirtualMeter, type MeteredPlace } from './virtual-meter.ts';
import { MeteredPlant } from './wiring/metered-plant.ts';
import type { Plant } from './wiring/plant.ts';

export class MeterInHand {
  /** What the rig is to be wired to. */
  readonly plant: MeteredPlant;
  private meter: VirtualMeter | null = null;

  constructor(
    plant: Plant,
    private readonly seed: number,
  ) {
    this.plant = new MeteredPlant(plant);
    this.plant.putAway();
  }
  /** The same seed and specification give the same meter. Null puts it away, and the leads back on the car. */
  take(meter: Meter | null): void {
    if (meter === null) this.plant.putAway();
    else this.plant.inHand = true;
    const { limiterOhm } = drawParameters(this.seed).line;
    this.meter = meter && new VirtualMeter(this.plant, meter, limiterOhm, this.seed);
  }
  /** True when the words were for the person with the meter. */
  act(words: string): boolean {
    this.meter?.act(words);
    return this.meter !== null;
  }
  /** Null where there is nothing to read. */
  read(place: MeteredPlace): number | null {
    const value = this.meter?.read(place) ?? Number.NaN;
    return Number.isFinite(value) ? value : null;
  }
}
