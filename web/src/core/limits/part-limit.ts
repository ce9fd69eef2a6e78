// SPDX-License-Identifier: MIT
// The limit of one result of one car: gathers override, rating, baseline and class default and lets precedence
// choose. A check hands in the rating, as only it knows what its result means.
import type { ResultName } from '../measurements/finding.ts';
import type { Car } from '../parts/part.ts';
import type { Limit } from '../verdicts/limit.ts';
import { baselineLimit } from '../history/baseline.ts';
import { classDefault } from './class-default.ts';
import { overrideTrouble } from './override.ts';
import { chosenLimit, overrideLimit, type Candidate } from './precedence.ts';

export interface LimitSpec {
  readonly checkId: string;
  readonly results: readonly ResultName[];
  /** Ratings of the very part by result id. */
  readonly ratings?: Readonly<Record<string, Candidate>>;
}
/** The limits of a check's results for one car; a result without any limit is left out. */
export function limitsFor({ checkId, results, ratings = {} }: LimitSpec, car: Car): Record<string, Limit> {
  const pairs = results.flatMap(({ id, unit }) => {
    const limit = limitOf(`${checkId}/${id}`, unit, ratings[id], car);
    return limit ? [[id, limit] as const] : [];
  });
  return Object.fromEntries(pairs);
}
function limitOf(key: string, unit: string, rating: Candidate, car: Car): Limit | undefined {
  const baseline = car.baselines?.find(({ checkResultId }) => checkResultId === key);
  const without = {
    rating,
    baseline: baseline && baselineLimit(baseline),
    classDefault: classDefault(key, car),
  };
  return chosenLimit({ override: overrideOf(key, unit, car, chosenLimit(without)), ...without });
}
/** An override that looks like a slip does not hold; the limit says so. */
function overrideOf(key: string, unit: string, car: Car, usual: Limit | undefined): Candidate {
  const override = car.overrides?.find(({ checkResultId }) => checkResultId === key);
  if (!override) return undefined;
  const trouble = overrideTrouble(override, [{ key, unit, min: usual?.min, max: usual?.max }]);
  return trouble ? { unusable: `Own override not used. ${trouble}` } : overrideLimit(override, unit);
}
