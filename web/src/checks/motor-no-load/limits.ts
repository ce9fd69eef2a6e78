// SPDX-License-Identifier: MIT
// Limits of motor-no-load: the motor's own label, its no-load current carried to the voltage of the result; else
// its baseline, else the upper end of its class times 1.25.
import { allowances } from '#core/limits/class-data';
import { noLoadV } from '#core/limits/no-load-voltage';
import { limitsFor } from '#core/limits/part-limit';
import type { Candidate } from '#core/limits/precedence';
import { scaledNoLoad } from '#core/limits/rating-scaling';
import type { Car, Motor } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';
import { results } from './analysis.ts';

export const limits = (car: Car): Readonly<Record<string, Limit>> =>
  limitsFor(
    {
      checkId: 'motor-no-load',
      part: 'motor',
      results,
      conditions: { 'no-load-current': `${noLoadV(car)} V`, 'no-load-speed': `${noLoadV(car)} V` },
      ratings: { 'no-load-current': currentRating(car), kv: kvRating(car.motor) },
    },
    car,
  );
/** A label that names no voltage is taken to mean the one that the result is told at. */
function currentRating(car: Car): Candidate {
  const atV = noLoadV(car);
  const { ratedNoLoadA, ratedNoLoadAtV = atV } = car.motor;
  if (ratedNoLoadA === undefined) return undefined;
  const scaled = scaledNoLoad({ value: ratedNoLoadA, atV: ratedNoLoadAtV }, atV);
  if ('unusable' in scaled) return scaled;
  const { above, watchAbove } = allowances['motor-no-load/no-load-current'];
  return {
    max: scaled.value * (1 + above),
    warnMax: scaled.value * (1 + watchAbove),
    unit: 'A',
    kind: 'rating',
    source: `label of the motor, ${scaled.words}, plus ${Math.round(above * 100)} % (from memory)`,
    ...(scaled.share > 0 && {
      doubt: { words: 'carrying the rating to another voltage', share: scaled.share },
    }),
  };
}
const kvRating = ({ ratedKvRpmPerV: kv, ratedKvTolerance: tolerance }: Motor): Candidate => ({
  min: kv * (1 - tolerance),
  max: kv * (1 + tolerance),
  unit: 'rpm/V',
  kind: 'rating',
  source: `label of the motor, within ${Math.round(tolerance * 100)} % (from memory), at 25 °C`,
});
