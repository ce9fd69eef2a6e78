// SPDX-License-Identifier: MIT
// The one decision rule, after JCGM 106:2012: a guard band on either side of each limit. A part passes only if
// the chance that it is out is at most 2.5 %, fails only if the chance that it is in is at most 2.5 %, and is
// undecided between. What was not measured never passes. It knows findings and limits, no checks.
import { chanceBeyond } from '../measurements/coverage-interval.ts';
import type { BudgetLine, Finding, Measured } from '../measurements/measurement.ts';
import type { Judged, Limit, VerdictWord } from './limit.ts';
import { whatWouldSettle } from './undecided-note.ts';

/** Greatest accepted chance of passing a part that is out, or of failing one that is in. */
export const acceptedRisk = 0.025;
/** Slack of the numeric propagation, so that a bound that lies on the limit is decided. */
const numericSlack = 1e-4;

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
/** Chance that the true value lies outside the limit, which may itself be known only so well. */
export function chanceOut(finding: Measured, limit: Limit): number {
  const { min, max } = limit;
  const below = min === undefined ? 0 : chanceBeyond(budgetAgainst(finding, limit, min), finding.value - min);
  const above = max === undefined ? 0 : chanceBeyond(budgetAgainst(finding, limit, max), max - finding.value);
  return Math.min(1, below + above);
}
/** The finding's budget and, for a limit carried by a model, the model's line at that bound. */
function budgetAgainst({ budget }: Measured, { doubt }: Limit, bound: number): readonly BudgetLine[] {
  if (!doubt) return budget;
  const u = Math.abs(bound) * doubt.share;
  return [
    ...budget,
    { source: doubt.words, u, shape: 'rectangular', dof: Number.POSITIVE_INFINITY, origin: 'limit' },
  ];
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
