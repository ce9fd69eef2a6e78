// SPDX-License-Identifier: MIT
// The limit of one result of one car: gathers override, rating, baseline and class default and lets precedence
// choose. A check hands in the rating, as only it knows what its result means.
import type { ResultName } from '../measurements/finding.ts';
import { isOfPart, type PartRef } from '../parts/identity.ts';
import { partRefOf, type Car, type PartKind } from '../parts/part.ts';
import { sameUnit } from '../units/shown-unit.ts';
import type { Limit } from '../verdicts/limit.ts';
import { baselineLimit } from '../history/baseline.ts';
import { classDefault } from './class-default.ts';
import { overrideTrouble } from './override.ts';
import { chosenLimit, overrideLimit, type Candidate } from './precedence.ts';

export interface LimitSpec {
  readonly checkId: string;
  /** The part that the check is of: its baseline holds for this very part only. */
  readonly part: PartKind;
  readonly results: readonly ResultName[];
  /** Ratings of the very part by result id. */
  readonly ratings?: Readonly<Record<string, Candidate>>;
  /** What results hold at by result id, where that hangs on the car: a baseline at another is not used. */
  readonly conditions?: Readonly<Record<string, string>>;
}
/** The limits of a check's results for one car; a result without any limit is left out. */
export function limitsFor(
  { checkId, part, results, ratings = {}, conditions = {} }: LimitSpec,
  car: Car,
): Record<string, Limit> {
  const pairs = results.flatMap(({ id, unit }) => {
    const wanted = {
      key: `${checkId}/${id}`,
      unit,
      of: partRefOf(car, part),
      condition: conditions[id],
    };
    const limit = limitOf(wanted, ratings[id], car);
    return limit ? [[id, limit] as const] : [];
  });
  return Object.fromEntries(pairs);
}
interface Wanted {
  readonly key: string;
  readonly unit: string;
  readonly of: PartRef;
  readonly condition?: string;
}
function limitOf(wanted: Wanted, rating: Candidate, car: Car): Limit | undefined {
  const without = { rating, baseline: baselineFor(wanted, car), classDefault: classDefault(wanted.key, car) };
  return chosenLimit({ override: overrideOf(wanted, car, chosenLimit(without)), ...without });
}
function baselineFor({ key, unit, of, condition }: Wanted, car: Car): Candidate {
  const baseline = car.baselines?.find(({ checkResultId }) => checkResultId === key);
  if (!baseline) return undefined;
  if (!isOfPart(baseline, of))
    return { unusable: `The baseline is of "${baseline.partName}" and is not used for "${of.partName}".` };
  if (!sameUnit(baseline.unit, unit))
    return { unusable: `The baseline is in ${baseline.unit} and not in ${unit}: it is not used.` };
  if (condition !== undefined && baseline.condition !== undefined && baseline.condition !== condition)
    return {
      unusable: `The baseline holds at ${baseline.condition} and not at ${condition}: it is not used.`,
    };
  return baselineLimit(baseline);
}
/** An override that looks like a slip does not hold; the limit says so. */
function overrideOf({ key, unit }: Wanted, car: Car, usual: Limit | undefined): Candidate {
  const override = car.overrides?.find(({ checkResultId }) => checkResultId === key);
  if (!override) return undefined;
  const trouble = overrideTrouble(override, [{ key, unit, min: usual?.min, max: usual?.max }]);
  return trouble ? { unusable: `Own override not used. ${trouble}` } : overrideLimit(override, unit);
}
