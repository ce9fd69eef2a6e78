// SPDX-License-Identifier: MIT
// Which of several limits holds: a person's override before a rating of the very part, before the part's own
// baseline, before the default of its class. The one chosen tells what it stands in place of and what could not
// be used. It knows no check and no part.
import type { Limit } from '../verdicts/limit.ts';
import type { Override } from './override.ts';

/** A limit that can't be used here, and why, in words. */
export interface Unusable {
  readonly unusable: string;
}
export type Candidate = Limit | Unusable | undefined;
export interface Candidates {
  readonly override?: Candidate;
  readonly rating?: Candidate;
  readonly baseline?: Candidate;
  readonly classDefault?: Candidate;
}
const isUnusable = (candidate: Candidate): candidate is Unusable =>
  candidate !== undefined && 'unusable' in candidate;
const isLimit = (candidate: Candidate): candidate is Limit =>
  candidate !== undefined && !isUnusable(candidate);

export function chosenLimit({ override, rating, baseline, classDefault }: Candidates): Limit | undefined {
  const order = [override, rating, baseline, classDefault];
  const first = order.findIndex(isLimit);
  if (first < 0) return undefined;
  const displaced = order
    .slice(first + 1)
    .filter(isLimit)
    .map(limitInWords);
  const refused = order.filter(isUnusable).map(({ unusable }) => unusable);
  return {
    ...(order[first] as Limit),
    ...(displaced.length > 0 && { displaced }),
    ...(refused.length > 0 && { refused }),
  };
}
export function overrideLimit(override: Override, unit: string): Limit {
  const { min, max, reason, date } = override;
  return {
    ...(min !== undefined && { min }),
    ...(max !== undefined && { max }),
    unit,
    kind: 'own override',
    source: `set by hand on ${date}: ${reason}`,
  };
}
/** "rating, at most 3.75 A: label of the motor at 7.4 V". */
export const limitInWords = (limit: Limit): string =>
  `${limit.kind}, ${boundsInWords(limit)}: ${limit.source}`;

function boundsInWords({ min, max, unit }: Limit): string {
  const say = (bound: number) => Number(bound.toPrecision(4));
  if (min !== undefined && max !== undefined) return `${say(min)} to ${say(max)} ${unit}`;
  return max !== undefined ? `at most ${say(max)} ${unit}` : `at least ${say(min ?? 0)} ${unit}`;
}
