// SPDX-License-Identifier: MIT
// A plant that shows what somebody holds at the taps, and at its load bank what Ohm's law says: for studies of the taps
// alone, which need no car. It has no dynamics and no truth.
import { type Plant, type PlantOutputs, restingInputs } from '../wiring/plant.ts';

/** The wiring asks in chunks of this length. */
const chunkS = 24e-6;
const bankOhm = [10, 4.7, 2.2] as const;
type Held = { -readonly [K in keyof PlantOutputs]: PlantOutputs[K] };

export class HeldPlant implements Plant {
  readonly inputs = restingInputs();
  /** True values at the taps; the load bank's current comes on top of both currents. */
  readonly held: Held = {
    packV: 7.6,
    controllerV: 7.6,
    packA: 0,
    railV: 6,
    railA: 0,
    midCellV: 3.8,
    probeV: 0,
    probeWide: false,
    thermistorC: [25, 25, 25, 25],
    hall: [false, false, false],
  };
  advance(_: number, onStep: (outputs: PlantOutputs, dtS: number) => void): void {
    onStep(this.outputs(), chunkS);
  }
  outputs(): PlantOutputs {
    const { feed, loadMask } = this.inputs;
    if (feed !== 'full' || loadMask === 0) return this.held;
    const siemens = bankOhm.reduce((sum, ohm, bit) => sum + (loadMask & (1 << bit) ? 1 / ohm : 0), 0);
    const bankA = this.held.railV * siemens;
    return { ...this.held, packA: this.held.packA + bankA, railA: this.held.railA + bankA };
  }
  person(): undefined {
    return undefined;
  }
  truth(): Readonly<Record<string, number>> {
    return {};
  }
}
