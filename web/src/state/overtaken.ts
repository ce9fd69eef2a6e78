// SPDX-License-Identifier: MIT
// Whether a stored verdict has been overtaken: its part was repaired since, or a person's own limit of the result is
// another one now. Such a verdict counts as old. Pure.
import type { Repair } from '#core/history/part-history';
import { isOfPart } from '#core/parts/identity';
import type { Car } from '#core/parts/part';
import type { Overtaken } from './chain-view.ts';
import type { ResultLine, RunSummary } from './run-summary.ts';

interface Now {
  readonly car: Car;
  readonly repairs: readonly Repair[];
}
/** The repair of its part since a run. */
export const repairedSince = (run: RunSummary, repairs: readonly Repair[]): Repair | undefined =>
  repairs.find((repair) => isOfPart(repair, run) && Date.parse(run.startedAt) < Date.parse(repair.at));

/** Why, in words; null while the verdict stands. */
export function overtaken(run: RunSummary, result: ResultLine, { car, repairs }: Now): string | null {
  const since = repairedSince(run, repairs);
  if (since) return `before the repair of ${since.at}`;
  return limitMoved(run, result, car) ? 'its limit is another one now' : null;
}
export const overtakenBy =
  (now: Now): Overtaken =>
  (run, result) =>
    overtaken(run, result, now) !== null;

function limitMoved({ checkId }: RunSummary, { id, limit }: ResultLine, { overrides = [] }: Car): boolean {
  const own = overrides.find(({ checkResultId }) => checkResultId === `${checkId}/${id}`);
  const wasOwn = limit?.kind === 'own override';
  if (!own) return wasOwn;
  return !wasOwn || limit.min !== own.min || limit.max !== own.max;
}
