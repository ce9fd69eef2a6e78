// SPDX-License-Identifier: MIT
// The one decision rule, after JCGM 106:2012: a guard band on either side of each limit. A part passes only if
// the chance that it is out is at most 2.5 %, fails only if the chance that it is in is at most 2.5 %, and is
// undecided between. What was not measured never passes. It knows findings and limits, no checks.
import type { Finding, Measured } from '../measurements/measurement.ts';
import { acceptedRisk, chanceOut, numericSlack } from './chance-out.ts';
import { heldAgainst } from './first-runs.ts';
import type { Judged, Limit, VerdictWord } from './limit.ts';
import type { Judgeable } from './settling.ts';
import { whatWouldSettle } from './undecided-note.ts';

/** What a verdict needs beside finding and limit; each may be missing. */
export interface Circumstances {
  /** Number of the rig that measured; '' or missing where it has none. */
  readonly rigSerial?: string;
  /** A result as it would be with one more tap calibrated; undefined where that brings nothing. */
  readonly withCalibrated?: (tap: string, resultId: string) => Judgeable | undefined;
}
export function judge(finding: Finding, limit?: Limit, circumstances: Circumstances = {}): Judged {
  if (!finding.measured || !isWhole(finding)) return { id: finding.id, limit, verdict: 'not measured' };
  if (!limit) return { id: finding.id, verdict: 'pass' };
  const held = heldAgainst(finding, limit, circumstances.rigSerial ?? '');
  const verdict = verdictOf(held.finding, limit);
  const notes = [noteOf(verdict, held.finding, limit, circumstances), held.words].filter(Boolean);
  return { id: finding.id, limit, verdict, ...(notes.length > 0 && { note: notes.join(' ') }) };
}
function verdictOf(finding: Measured, limit: Limit): VerdictWord {
  const out = chanceOut(finding, limit);
  if (out <= acceptedRisk + numericSlack) return 'pass';
  return 1 - out <= acceptedRisk + numericSlack ? 'fail' : 'undecided';
}
function noteOf(verdict: VerdictWord, finding: Measured, limit: Limit, { withCalibrated }: Circumstances) {
  if (verdict === 'pass') return watchNote(finding, limit);
  if (verdict === 'fail') return undefined;
  // After a calibration the first runs would be of another one: it brings nothing against them.
  const tried = limit.firstRuns ? undefined : withCalibrated;
  return whatWouldSettle(finding, limit, tried && ((tap) => tried(tap, finding.id)));
}
export const judgeAll = (
  findings: readonly Finding[],
  limits: Readonly<Record<string, Limit>>,
  circumstances: Circumstances = {},
): Judged[] => findings.map((finding) => judge(finding, limits[finding.id], circumstances));

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
