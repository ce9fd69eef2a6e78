// SPDX-License-Identifier: MIT
// The runs of one part as its history takes them, from the logbook's summaries. Runs on a virtual rig count for the
// car of their seed only: they make no history of a real part. Pure.
import type { Finding } from '#core/measurements/measurement';
import type { RunFindings } from '#core/history/part-history';
import { virtualSerial } from '#core/record/virtual-truth';
import type { ResultLine, RunSummary } from './run-summary.ts';

const [virtualPrefix] = virtualSerial(0).split('0');

/** What a summary kept of a finding; one without u and budget counts as not measured here. */
function findingOf(line: ResultLine): Finding {
  const { id, title, unit, value, interval, u, budget, condition } = line;
  if (value === undefined || !interval || u === undefined || !budget)
    return { measured: false, id, title, unit, reason: line.reason ?? '' };
  const lines = budget.map((each) => ({ ...each, dof: each.dof ?? Number.POSITIVE_INFINITY }));
  const said = { evidence: [], formula: '', notes: [], ...(condition !== undefined && { condition }) };
  return { measured: true, id, title, unit, value, u, interval, budget: lines, ...said };
}
export function runsOfPart(runs: readonly RunSummary[], partName: string, car: string): RunFindings[] {
  return runs.flatMap((run) => {
    const { id: runId, checkId, startedAt, rigSerial, results } = run;
    if (run.partName !== partName || rigSerial === undefined) return [];
    if (rigSerial.startsWith(virtualPrefix) && run.car !== car) return [];
    const verdicts = Object.fromEntries(results.map((line) => [line.id, line.verdict]));
    return [{ runId, checkId, startedAt, partName, rigSerial, findings: results.map(findingOf), verdicts }];
  });
}
