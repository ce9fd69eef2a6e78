// SPDX-License-Identifier: MIT
// The current at which checks tell what is left in a race.
import type { Car } from '#core/parts/part';

/** Mean of a race of a tenth-scale car with a modified motor, 30 to 42 A (common practice, no source). */
const usualA = 40;
/** As entered with the pack, or the usual one. */
export const raceCurrentA = ({ pack }: Car): number => pack.raceCurrentA ?? usualA;
