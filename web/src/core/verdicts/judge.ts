// SPDX-License-Identifier: MIT
// The one decision rule, after JCGM 106:2012: a guard band on either side of each limit. A part passes only if
// the chance that it is out is at most 2.5 %, fails only if the chance that it is in is at most 2.5 %, and is
// undecided between. What was not measured never passes. It knows findings and limits, no checks.
import type { Finding, Measured } from '../measurements/measurement.ts';
import { acceptedRisk, chanceOut, numericSlack } from './chance-out.ts';
import type { Judged, Limit, VerdictWord } from './limit.ts';
import { whatWouldSettle } from './undecided-note.ts';

export function judge(finding: Finding, limit?: Limit): Judged {
  if (!finding.measured || !isWhole(finding)) return { id: finding.id, limit, verdict: 'not measured' };
  if (!limit) return { id: finding.id, verdict: 'pass' };
  const out = chanceOut(finding, limit);
  if (out <= acceptedRisk + numericSlack)
    return { id: finding.id, limit, verdict: 'pass', note: watchNote(finding, limit) };
  if (1 - out <= acceptedRisk + numericSlack) return { id: finding.id, limit, verdict: 'fail' };
  return { id: finding.id, limit, verdict: 'undecided', note: whatWouldSettle(finding, limit) };
}
export const judgeAll = (findings: readonly Finding[], limits: Readonly<Record<string, Limit>>): Judged[] =>
  findings.map((finding) => judge(finding, limits[finding.id]));

const severity: readonly VerdictWord[] = ['pass', 'undecided', 'not measured', 'fail'];
/** Verdict of a whole run: any fail, else anything not measured, else anything undecided, else pass. */
export function overallVerdict(judged: readonly Pick<Judged, 'verdict'>[]): VerdictWord {
  if (judged.length === 0) return 'not measured';
  const worst = Math.max(...judged.map(({ verdict }) => severity.indexOf(verdict)));
  return severity[worst];
}
const isWhole = (finding: Measured): boolean =>
  [finding.value, finding.u, ...finding.interval].every((number) => Number.isFinite(number));

function watchNote(
  { value, unit }: Measured,
  { warnMin, warnMax, unit: limitUnit }: Limit,
): string | undefined {
  if (warnMin !== undefined && value < warnMin) return `Watch it: below ${warnMin} ${limitUnit || unit}.`;
  if (warnMax !== undefined && value > warnMax) return `Watch it: above ${warnMax} ${limitUnit || unit}.`;
  return undefined;
}
