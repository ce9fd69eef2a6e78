// SPDX-License-Identifier: MIT
// What the converter sees: tap volts at the sample instant with the board's noise and non-linearity, and the
// inputs of the multiplexer. It knows quantities and pins, not codes.
import type { BoardAnalog } from '../machine/board.ts';
import type { SeededRandom } from '../seeded-random.ts';
import { nonLinearityLsb } from './non-linearity.ts';
import type { PlantClock } from './plant-clock.ts';
import { tapIndex } from './tap-filters.ts';
import { thermistorV } from './thermistor.ts';

/** Standard deviation of one conversion. */
const NOISE_LSB = 0.6;
const REFERENCE_INPUT = 4;
const MID_CELL = tapIndex('midCell');
const POLARITY = tapIndex('polarity');

export function analogFront(clock: PlantClock, noise: SeededRandom): BoardAnalog {
  const { errors, filters, plant } = clock;
  const { avccV } = errors;
  const fraction = (cycle: number): number => clock.fraction(cycle);
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
