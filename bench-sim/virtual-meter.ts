// SPDX-License-Identifier: MIT
// The person at a virtual bench who calibrates: does what the words say, and reads a simulated meter, whose gain and
// zero are off by amounts drawn once within its specification, range by range, and which shows whole counts.
// The same seed gives the same readings. It knows no session.
import type { Meter, MeterRange } from '#core/calibration/meter';
import { seededRandom, type SeededRandom } from './seeded-random.ts';
import type { MeteredPlant } from './wiring/metered-plant.ts';

export const meteredPlaces = ['source', 'packCurrent', 'railCurrent', 'limitedFeed'] as const;
export type MeteredPlace = (typeof meteredPlaces)[number];
const quantityAt = {
  source: 'voltage',
  packCurrent: 'current',
  railCurrent: 'current',
  limitedFeed: 'resistance',
} as const;

export class VirtualMeter {
  private readonly random: SeededRandom;
  private readonly cellV: number;
  private readonly errors = new Map<MeterRange, { readonly gain: number; readonly zero: number }>();

  constructor(
    private readonly plant: MeteredPlant,
    private readonly meter: Meter,
    private readonly limitedFeedOhm: number,
    seed: number,
  ) {
    this.random = seededRandom(seed, 'meter');
    this.cellV = this.random.stream('cell').between(3.75, 4.15);
  }
  act(words: string): void {
    const { plant } = this;
    plant.sourceV = /\bone cell\b/.test(words)
      ? this.cellV
      : /\bthe whole pack\b/.test(words)
        ? 2 * this.cellV
        : null;
    if (/\bice\b/.test(words)) plant.bathC = 0;
    else if (/\bthermistors\b.*\btogether\b/.test(words))
      plant.bathC = plant.outputs().thermistorC[3] ?? null;
    else plant.bathC = null;
    plant.takeHeld('packA');
    plant.takeHeld('railA');
    plant.person(words);
  }
  read(place: MeteredPlace): number {
    const value = this.trueAt(place);
    const range = this.rangeFor(quantityAt[place], value);
    if (!range) return Number.NaN;
    const { gain, zero } = this.errorOf(range);
    const shown = value * (1 + gain) + zero;
    return Number((Math.round(shown / range.resolution) * range.resolution).toPrecision(9));
  }
  private trueAt(place: MeteredPlace): number {
    if (place === 'limitedFeed') return this.limitedFeedOhm;
    if (place === 'source') return this.plant.sourceV ?? Number.NaN;
    return this.plant.takeHeld(place === 'packCurrent' ? 'packA' : 'railA');
  }
  /** As a meter that picks its range: the smallest that shows the value. */
  private rangeFor(quantity: string, value: number): MeterRange | undefined {
    return this.meter.ranges
      .filter((range) => range.quantity === quantity && Math.abs(value) <= range.upTo)
      .toSorted((a, b) => a.upTo - b.upTo)[0];
  }
  private errorOf(range: MeterRange) {
    const known = this.errors.get(range);
    if (known) return known;
    const random = this.random.stream(`${range.quantity} up to ${range.upTo}`);
    const [p, c] = [range.percentOfReading / 100, range.counts * range.resolution];
    const error = { gain: random.between(-p, p), zero: random.between(-c, c) };
    this.errors.set(range, error);
    return error;
  }
}
