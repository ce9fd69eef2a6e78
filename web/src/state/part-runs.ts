// SPDX-License-Identifier: MIT
// The runs of one part, from the logbook's summaries: they go by its identity, or its name where they have none, so that
// its history follows it into another car and under another name. Runs on a virtual rig count for the car of their seed only: they make no history of a real part. Pure.
import type { Finding } from '#core/measurements/measurement';
import type { RunFindings } from '#core/history/part-history';
import { virtualSerial } from '#core/record/virtual-truth';
import { isOfPart, isSameCar, type CarRef, type PartRef } from '#core/parts/identity';
import { partRefOf, type Car } from '#core/parts/part';
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
const isOf = (run: RunSummary, part: PartRef, car: CarRef): boolean =>
  isOfPart(run, part) && (!isVirtual(run) || isSameCar({ name: run.car, id: run.carId }, car));
/** Of a virtual rig: it counts for its own car alone. */
export const isVirtual = ({ rig, rigSerial }: Pick<RunSummary, 'rig' | 'rigSerial'>): boolean =>
  rigSerial?.startsWith(virtualPrefix) ?? rig === virtualRig;
/** How a run's summary calls the virtual rig. */
export const virtualRig = 'virtual rig';
/** All ended runs of these checks on the parts that the car has now, in the order of the logbook. */
export function runsOfChecks(
  runs: readonly RunSummary[],
  checks: readonly ShownCheck[],
  car: Car,
): RunSummary[] {
  const parts = new Map(checks.map(({ id, part }) => [id, partRefOf(car, part)]));
  return runs.filter((run) => {
    const part = parts.get(run.checkId);
    return part !== undefined && run.endedAt !== undefined && isOf(run, part, car);
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

export function runsOfPart(runs: readonly RunSummary[], part: PartRef, car: CarRef): RunFindings[] {
  return runs.flatMap((run) => {
    const { id: runId, checkId, startedAt, rigSerial, results } = run;
    if (rigSerial === undefined || !isOf(run, part, car)) return [];
    const verdicts = Object.fromEntries(results.map((line) => [line.id, line.verdict]));
    return [{ runId, checkId, startedAt, ...part, rigSerial, findings: results.map(findingOf), verdicts }];
  });
}
