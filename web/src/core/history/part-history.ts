// SPDX-License-Identifier: MIT
// The history of one result of one part: accepted runs in order of time, cut at every noted repair. From what
// records hold to points, pure. It knows findings, no store and no check.
import type { Finding, Measured } from '../measurements/measurement.ts';
import { isOfPart, type PartRef } from '../parts/identity.ts';
import type { VerdictWord } from '../verdicts/limit.ts';

/** What of a run's record its history needs. */
export interface RunFindings extends PartRef {
  readonly runId: string;
  readonly checkId: string;
  /** ISO 8601. */
  readonly startedAt: string;
  /** Serial number of the rig; the same rig's fixed errors fall out of a difference. */
  readonly rigSerial: string;
  readonly findings: readonly Finding[];
  readonly verdicts: Readonly<Record<string, VerdictWord>>;
}
export interface Repair extends PartRef {
  /** ISO 8601 date or date and time; runs from then on are of the part as repaired. */
  readonly at: string;
  readonly words: string;
}
export interface HistoryPoint extends PartRef {
  readonly runId: string;
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
  part: PartRef,
  checkResultId: string,
  repairs: readonly Repair[] = [],
): HistorySegment[] {
  const [checkId, resultId] = checkResultId.split('/');
  const points = runs
    .filter((run) => isOfPart(run, part) && run.checkId === checkId)
    .flatMap((run) => pointOf(run, resultId))
    .toSorted(byTime)
    .filter(({ finding }, _, all) => finding.condition === all.at(-1)?.finding.condition);
  const cuts = repairs.filter((repair) => isOfPart(repair, part)).toSorted(byTime);
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
  const { runId, partName, partId, startedAt: at, rigSerial } = run;
  return [{ runId, partName, ...(partId !== undefined && { partId }), at, rigSerial, finding }];
}
/** A date alone stands for its first moment, in universal time. */
const before = (a: string, b: string): boolean => Date.parse(a) < Date.parse(b);
const byTime = (a: { readonly at: string }, b: { readonly at: string }): number =>
  Date.parse(a.at) - Date.parse(b.at);
