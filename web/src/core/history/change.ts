// SPDX-License-Identifier: MIT
// "Changed by x +- U since then": a later result less the baseline's mean, with what both share taken out. On the
// same rig a gain, an offset and a reference act on both alike, so only the difference of what they do is left.
// It knows findings and baselines' points, no limits.
import jstat from 'jstat';
import type { BudgetLine, Measured } from '../measurements/measurement.ts';
import { staysWithRig } from '../measurements/rig-errors.ts';
import { sampleStandardDeviation } from 'simple-statistics';
import { meanOf } from './individuals-chart.ts';
import type { HistoryPoint } from './part-history.ts';

export interface Change {
  /** Later less earlier, in the result's unit. */
  readonly by: number;
  readonly u: number;
  readonly dof: number;
  /** Half of the 95 % interval. */
  readonly half: number;
  readonly clear: boolean;
  /** Sources that fall out because both sides have them. */
  readonly shared: readonly string[];
}
const endless = Number.POSITIVE_INFINITY;
/** Errors that stay with the way a result is made; zero drift and scatter come anew with each run. */
const ofTheMethod = 'from memory';

/** Null with fewer than two points in the baseline. */
export function changeSince(baseline: readonly HistoryPoint[], later: HistoryPoint): Change | null {
  if (baseline.length < 2) return null;
  const values = baseline.map(({ finding }) => finding.value);
  const scatter = sampleStandardDeviation(values);
  const sameRig = baseline.every(({ rigSerial }) => rigSerial !== '' && rigSerial === later.rigSerial);
  const split = sharedWith(later.finding, baseline[0].finding, sameRig);
  const parts = [...scatterParts(scatter, values.length, split.ownU), { u: split.restU, dof: endless }];
  return changeOf(later.finding.value - meanOf(values), parts, split.shared);
}
export interface Part {
  readonly u: number;
  readonly dof: number;
}
/** The later run scatters as the first ones did, or by its own budget if that is more. The same estimated scatter
 *  on both sides is one estimate, with one number of degrees of freedom. */
function scatterParts(scatter: number, count: number, ownU: number): Part[] {
  const dof = count - 1;
  if (scatter >= ownU) return [{ u: scatter * Math.sqrt(1 + 1 / count), dof }];
  return [
    { u: scatter / Math.sqrt(count), dof },
    { u: ownU, dof: endless },
  ];
}
export function changeOf(by: number, parts: readonly Part[], shared: readonly string[]): Change {
  const u = Math.hypot(...parts.map((part) => part.u));
  const spread = parts.reduce((sum, part) => sum + part.u ** 4 / part.dof, 0);
  const dof = spread > 0 ? u ** 4 / spread : endless;
  const half = u * (dof > 1e6 ? jstat.normal.inv(0.975, 0, 1) : jstat.studentt.inv(0.975, dof));
  return { by, u, dof, half, clear: Math.abs(by) > half, shared };
}
interface Split {
  /** Lines that are new with every run, and what they come to. */
  readonly own: readonly BudgetLine[];
  readonly ownU: number;
  /** What is left of the fixed errors in the difference. */
  readonly restU: number;
  readonly shared: readonly string[];
}
/** What two results have in common falls out of their difference. */
export function sharedWith(later: Measured, first: Measured, sameRig: boolean): Split {
  const fixed = (line: BudgetLine) => (staysWithRig(line) ? sameRig : line.origin.startsWith(ofTheMethod));
  const twin = (line: BudgetLine) =>
    first.budget.find(({ source, origin }) => source === line.source && origin === line.origin);
  const shared = later.budget.filter((line) => fixed(line) && twin(line));
  const rig = (line: BudgetLine) => staysWithRig(line) && !shared.includes(line);
  const rest = later.budget.filter((line) => !shared.includes(line) && !rig(line));
  /** A rig error not shared is there twice, once on either side. */
  const twice = [...later.budget, ...first.budget].filter((line) => staysWithRig(line) && !isShared(line));
  function isShared({ source, origin }: BudgetLine): boolean {
    return shared.some((each) => each.source === source && each.origin === origin);
  }
  return {
    own: rest,
    ownU: Math.hypot(...rest.map(({ u }) => u)),
    restU: Math.hypot(...shared.map((line) => line.u - (twin(line)?.u ?? 0)), ...twice.map(({ u }) => u)),
    shared: shared.map(({ source }) => source),
  };
}
/** "Changed by +0.31 +- 0.12 A since its first 5 runs." */
export function changeWords({ by, half, clear, shared }: Change, unit: string, runs: number): string {
  const digits = half > 0 ? Math.max(0, Math.min(6, 1 - Math.floor(Math.log10(half)))) : 2;
  const since = `since its first ${runs} runs`;
  const said = `by ${by < 0 ? '\u2212' : '+'}${Math.abs(by).toFixed(digits)} ± ${half.toFixed(digits)} ${unit} ${since}`;
  const out =
    shared.length > 0
      ? ` Left out, as both sides have it: ${shared.join(', ')}.`
      : ' The runs share no errors.';
  return clear ? `Changed ${said}.${out}` : `No change seen: ${said}.${out}`;
}
