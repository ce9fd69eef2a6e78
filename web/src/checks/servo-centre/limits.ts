// SPDX-License-Identifier: MIT
// Limit of servo-centre: a horn further off than half a tooth would sit better on the next one.
import { limitsFor } from '#core/limits/part-limit';
import type { Car } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';
import { results } from './analysis.ts';

/** Fewest teeth of usual splines (23, 24 or 25, common practice): the widest step from tooth to tooth. */
const fewestTeeth = 23;
/** What a person may misjudge when choosing between two teeth. */
const judgedDegrees = 1;

/** Degrees from one tooth to the next: 15.65, 15, 14.4 for 23, 24, 25 teeth. */
export const toothDegrees = (teeth: number): number => 360 / teeth;

export function limits(car: Car): Readonly<Record<string, Limit>> {
  const { splineTeeth } = car.servo;
  const step = toothDegrees(splineTeeth ?? fewestTeeth);
  const spline = splineTeeth ? `${splineTeeth} teeth` : `a spline of unknown teeth, at least ${fewestTeeth}`;
  const halfATooth: Limit = {
    max: step / 2 + judgedDegrees,
    unit: 'degrees',
    kind: 'common practice',
    source: `half a tooth of ${spline} (${step.toFixed(1)} degrees apart, computed) and ${judgedDegrees} degree of judgement; further off, the next tooth is straighter; no source`,
  };
  return limitsFor(
    { checkId: 'servo-centre', part: 'servo', results, ratings: { 'horn-offset': halfATooth } },
    car,
  );
}
