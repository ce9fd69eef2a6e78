// SPDX-License-Identifier: MIT
// A result held against the part's own first runs. On the same rig with the same calibration, gain, reference and
// shunt were off by the same then as now, so in the comparison only a difference of what they do is left; on another
// rig, or after a calibration, both sides' errors count. It makes no limit.
import type { BudgetLine, Measured } from '../measurements/measurement.ts';
import { staysWithRig } from '../measurements/rig-errors.ts';
import { nearestBound } from './chance-out.ts';
import type { FirstRuns } from './first-runs-schema.ts';
import type { Limit } from './limit.ts';

type RigError = FirstRuns['errors'][number];

export interface Held {
  readonly finding: Measured;
  /** What was left out of the doubt, or why nothing was; undefined for a limit that is of no first runs. */
  readonly words?: string;
}
/** `rigSerial` is '' where the rig has no number: then it is never the same. */
export function heldAgainst(finding: Measured, limit: Limit, rigSerial: string): Held {
  const { firstRuns } = limit;
  if (!firstRuns || firstRuns.errors.length === 0) return { finding };
  const same = rigSerial !== '' && rigSerial === firstRuns.rigSerial;
  const shares = same ? finding.budget.filter((line) => twinOf(line, firstRuns)) : [];
  // Errors in proportion scale the bound as they scale the mean: what they do at the bound falls out.
  const scale = Math.abs(nearestBound(finding.value, limit) / firstRuns.centre);
  const left = finding.budget.map((line) => {
    const twin = shares.includes(line) && twinOf(line, firstRuns);
    return twin ? { ...line, u: Math.abs(line.u - twin.u * scale) } : line;
  });
  const others = firstRuns.errors.filter((error) => !shares.some((line) => isTwin(line, error)));
  const budget = [...left, ...others.map((error) => lineOf(error, scale))];
  return { finding: { ...finding, budget }, words: wordsOf(shares, others) };
}
const isTwin = (line: Pick<BudgetLine, 'source' | 'origin'>, { source, origin }: RigError): boolean =>
  line.source === source && line.origin === origin;
const twinOf = (line: BudgetLine, { errors }: FirstRuns): RigError | undefined =>
  staysWithRig(line) ? errors.find((error) => isTwin(line, error)) : undefined;
const lineOf = ({ source, origin, u }: RigError, scale: number): BudgetLine => ({
  source: `${source}, in the first runs`,
  u: u * scale,
  shape: origin.startsWith('calibration') ? 'normal' : 'rectangular',
  dof: Number.POSITIVE_INFINITY,
  origin,
});
function wordsOf(shares: readonly BudgetLine[], others: readonly RigError[]): string {
  const named = (lines: readonly { readonly source: string }[]) =>
    lines.map(({ source }) => source).join(', ');
  if (shares.length === 0)
    return "Held against the part's own first runs, made on another rig or before a calibration: the errors of both count in full.";
  const said = `Held against the part's own first runs on this rig: what both share is left out of the doubt (${named(shares)}).`;
  return others.length > 0 ? `${said} In full on both sides: ${named(others)}.` : said;
}
