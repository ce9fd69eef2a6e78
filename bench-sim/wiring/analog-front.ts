// SPDX-License-Identifier: MIT
// What the converter sees: tap volts at the sample instant with the board's noise and non-linearity, and the
// inputs of the multiplexer. It knows quantities and pins, not codes.
import type { BoardAnalog } from '../machine/board.ts';
import type { SeededRandom } from '../seeded-random.ts';
import { nonLinearityLsb } from './non-linearity.ts';
import type { Plant } from './plant.ts';
import type { RigErrors } from './rig-errors.ts';
import { tapIndex, type TapFilters } from './tap-filters.ts';
import { thermistorV } from './thermistor.ts';

/** Standard deviation of one conversion. */
const NOISE_LSB = 0.6;
const REFERENCE_INPUT = 4;
const MID_CELL = tapIndex('midCell');
const POLARITY = tapIndex('polarity');

/** Fraction 0..1 of the way between the plant's mark and its latest step at a cycle. */
export type Fraction = (cycle: number) => number;

export function analogFront(
  errors: RigErrors,
  filters: TapFilters,
  plant: Plant,
  fraction: Fraction,
  noise: SeededRandom,
): BoardAnalog {
  const { avccV } = errors;
  const disturbed = (volts: number): number =>
    volts + ((nonLinearityLsb(errors, volts / avccV) + NOISE_LSB * noise.gaussian()) * avccV) / 1024;
  const selected = (input: number, cycle: number): number => {
    if (input < REFERENCE_INPUT) {
      return thermistorV(errors.thermistors[input], plant.outputs().thermistorC[input] ?? null, avccV);
    }
    if (input === REFERENCE_INPUT) return errors.referenceV;
    if (input === 7) return 0;
    return filters.at(input === 5 ? MID_CELL : POLARITY, fraction(cycle));
  };
  return {
    avccV,
    bandGapV: errors.bandGapV,
    readTap: (channel, cycle) => disturbed(filters.at(channel, fraction(cycle))),
    readMultiplexer: (input, cycle) => disturbed(selected(input, cycle)),
  };
}
