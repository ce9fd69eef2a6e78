// SPDX-License-Identifier: MIT
// The runs of one part, from the logbook's summaries: they go by the part's name, so that its history follows it into
// another car. Runs on a virtual rig count for the car of their seed only: they make no history of a real part. Pure.
import type { Finding } from '#core/measurements/measurement';
import type { RunFindings } from '#core/history/part-history';
import { virtualSerial } from '#core/record/virtual-truth';
import { partNameOf, type Car } from '#core/parts/part';
import type { CheckCard } from '../worker/messages.ts';
import type { ResultLine, RunSummary } from './run-summary.ts';

const [virtualPrefix] = virtualSerial(0).split('0');

/** What a summary kept of a finding; one without u and budget counts as not measured here. */
export function findingOf(line: ResultLine): Finding {
  const { id, title, unit, value, interval, u, budget, condition } = line;
  if (value === undefined || !interval || u === undefined || !budget)
    return { measured: false, id, title, unit, reason: line.reason ?? '' };
  const lines = budget.map((each) => ({ ...each, dof: each.dof ?? Number.POSITIVE_INFINITY }));
  const said = { evidence: [], formula: '', notes: [], ...(condition !== undefined && { condition }) };
  return { measured: true, id, title, unit, value, u, interval, budget: lines, ...said };
}
export type ShownCheck = Pick<CheckCard, 'id' | 'part' | 'place'>;

/** Whether a run is one of this part in this car. */
function isOf({ rig, rigSerial, ...run }: RunSummary, partName: string, car: string): boolean {
  const virtual = rigSerial?.startsWith(virtualPrefix) ?? rig === virtualRig;
  return run.partName === partName && (!virtual || run.car === car);
}
/** How a run's summary calls the virtual rig. */
export const virtualRig = 'virtual rig';
/** All ended runs of these checks on the parts that the car has now, in the order of the logbook. */
export function runsOfChecks(
  runs: readonly RunSummary[],
  checks: readonly ShownCheck[],
  car: Car,
): RunSummary[] {
  const parts = new Map(checks.map(({ id, part }) => [id, partNameOf(car, part)]));
  return runs.filter((run) => {
    const partName = parts.get(run.checkId);
    return partName !== undefined && run.endedAt !== undefined && isOf(run, partName, car.name);
  });
}
/** The newest of each check. */
export function newestRuns(
  runs: readonly RunSummary[],
  checks: readonly ShownCheck[],
  car: Car,
): RunSummary[] {
  const newest = new Map<string, RunSummary>();
  for (const run of runsOfChecks(runs, checks, car)) {
    const known = newest.get(run.checkId);
    if (!known || run.startedAt > known.startedAt) newest.set(run.checkId, run);
  }
  return [...newest.values()];
}
export const newestRun = (runs: readonly RunSummary[], check: ShownCheck, car: Car): RunSummary | undefined =>
  newestRuns(runs, [check], car)[0];

export function runsOfPart(runs: readonly RunSummary[], partName: string, car: string): RunFindings[] {
  return runs.flatMap((run) => {
    const { id: runId, checkId, startedAt, rigSerial, results } = run;
    if (rigSerial === undefined || !isOf(run, partName, car)) return [];
    const verdicts = Object.fromEntries(results.map((line) => [line.id, line.verdict]));
    return [{ runId, checkId, startedAt, partName, rigSerial, findings: results.map(findingOf), verdicts }];
  });
}
