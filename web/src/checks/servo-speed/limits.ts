// SPDX-License-Identifier: MIT
// Limit of servo-speed: the label's time at the rated voltage, and 15 % more; else its baseline.
import { limitsFor } from '#core/limits/part-limit';
import type { Candidate } from '#core/limits/precedence';
import { timeRating } from '#core/limits/servo-ratings';
import type { Car, Servo } from '#core/parts/part';
import { servoSpeed } from '#core/units/shown-unit';
import type { Limit } from '#core/verdicts/limit';
import { results } from './analysis.ts';

/** From memory, no source. */
const slowestShare = 1.15;

export const limits = (car: Car): Readonly<Record<string, Limit>> =>
  limitsFor(
    { checkId: 'servo-speed', part: 'servo', results, ratings: { 'time-per-60-rated': rating(car.servo) } },
    car,
  );
function rating(servo: Servo): Candidate {
  if ((servo.ratedSecondsPer60 ?? servo.secondRating?.secondsPer60) === undefined) return undefined;
  const scaled = timeRating(servo, servo.ratedVoltageV);
  if ('unusable' in scaled) return scaled;
  return {
    max: scaled.value * slowestShare,
    unit: servoSpeed,
    kind: 'rating',
    source: `label of the servo, ${scaled.words}, and 15 % more (from memory, no source)`,
    ...(scaled.share > 0 && {
      doubt: { words: 'carrying the rating to another voltage', share: scaled.share },
    }),
  };
}
