// SPDX-License-Identifier: MIT
// Limit of servo-stall: the label's stall current, carried to the rated voltage where it holds at another, within
// the label's tolerance; else baseline or class.
import { limitsFor } from '#core/limits/part-limit';
import type { Candidate } from '#core/limits/precedence';
import { stallRating } from '#core/limits/servo-ratings';
import type { Car, Servo } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';
import { results } from './analysis.ts';

export const limits = (car: Car): Readonly<Record<string, Limit>> =>
  limitsFor(
    { checkId: 'servo-stall', part: 'servo', results, ratings: { 'stall-current': rating(car.servo) } },
    car,
  );

function rating(servo: Servo): Candidate {
  const { ratedStallA, secondRating, ratedStallTolerance: tolerance, ratedVoltageV } = servo;
  if ((ratedStallA ?? secondRating?.stallA) === undefined) return undefined;
  const scaled = stallRating(servo, ratedVoltageV);
  if ('unusable' in scaled) return scaled;
  return {
    min: scaled.value * (1 - tolerance),
    max: scaled.value * (1 + tolerance),
    unit: 'A',
    kind: 'rating',
    source: `label of the servo, ${scaled.words}, within ${Math.round(tolerance * 100)} %`,
    ...(scaled.share > 0 && {
      doubt: { words: 'carrying the rating to another voltage', share: scaled.share },
    }),
  };
}
