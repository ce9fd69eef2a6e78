// SPDX-License-Identifier: MIT
// The history of one result of one part: accepted runs in order of time, cut at every noted repair. From what
// records hold to points, pure. It knows findings, no store and no check.
import type { Finding, Measured } from '../measurements/measurement.ts';
import type { VerdictWord } from '../verdicts/limit.ts';

/** What of a run's record its history needs. */
export interface RunFindings {
  readonly runId: string;
  readonly checkId: string;
  /** ISO 8601. */
  readonly startedAt: string;
  readonly partName: string;
  /** Serial number of the rig; the same rig's fixed errors fall out of a difference. */
  readonly rigSerial: string;
  readonly findings: readonly Finding[];
  readonly verdicts: Readonly<Record<string, VerdictWord>>;
}
export interface Repair {
  readonly partName: string;
  /** ISO 8601 date or date and time; runs from then on are of the part as repaired. */
  readonly at: string;
  readonly words: string;
}
export interface HistoryPoint {
  readonly runId: string;
  readonly partName: string;
  readonly at: string;
  readonly rigSerial: string;
  readonly finding: Measured;
}
export interface HistorySegment {
  /** The repair it begins with; null for the part as it came. */
  readonly since: Repair | null;
  readonly points: readonly HistoryPoint[];
}
/** A run counts unless its result was not measured or failed (a failed part sets no standard for itself), or holds at
 *  another condition than the last one: a motor at 11.1 V is no standard for it at 7.4 V. */
export function historyOf(
  runs: readonly RunFindings[],
  partName: string,
  checkResultId: string,
  repairs: readonly Repair[] = [],
): HistorySegment[] {
  const [checkId, resultId] = checkResultId.split('/');
  const points = runs
    .filter((run) => run.partName === partName && run.checkId === checkId)
    .flatMap((run) => pointOf(run, resultId))
    .toSorted(byTime)
    .filter(({ finding }, _, all) => finding.condition === all.at(-1)?.finding.condition);
  const cuts = repairs.filter((repair) => repair.partName === partName).toSorted(byTime);
  return [null, ...cuts].map((since, i) => ({
    since,
    points: points.filter(
      ({ at }) => (!since || !before(at, since.at)) && (!cuts[i] || before(at, cuts[i].at)),
    ),
  }));
}
function pointOf(run: RunFindings, resultId: string): HistoryPoint[] {
  const finding = run.findings.find(({ id }) => id === resultId);
  if (!finding?.measured || !Number.isFinite(finding.value) || run.verdicts[resultId] === 'fail') return [];
  return [{ runId: run.runId, partName: run.partName, at: run.startedAt, rigSerial: run.rigSerial, finding }];
}
/** A date alone stands for its first moment, in universal time. */
const before = (a: string, b: string): boolean => Date.parse(a) < Date.parse(b);
const byTime = (a: { readonly at: string }, b: { readonly at: string }): number =>
  Date.parse(a.at) - Date.parse(b.at);
