// SPDX-License-Identifier: MIT
// What would settle an undecided result, as numbers: which line rules and its share, how many runs averaged would
// do, what the uncertainty must fall to, what calibrating a tap would bring. By the same propagation that the
// verdict is made with. It writes no words and decides nothing.
import { halfWidth } from '../measurements/coverage-interval.ts';
import type { BudgetLine, Measured } from '../measurements/measurement.ts';
import { budgetAgainst, isDecided, nearestBound } from './chance-out.ts';
import { declaredTap } from './line-tap.ts';
import type { Limit } from './limit.ts';

export interface Settling {
  /** From the value to the nearest bound, and which it is. */
  readonly distance: number;
  readonly bound: number;
  /** Half of the 95 % interval against that bound, the limit's own doubt included. */
  readonly half: number;
  readonly dominant: { readonly source: string; readonly share: number } | null;
  /** The largest half-width at which the verdict would fall, all lines shrunk alike. */
  readonly wantedHalf: number;
  /** Runs to average, this one counted, if the mean stays here; null when even `repeatsAtMost` don't do. */
  readonly repeats: number | null;
  readonly calibration: Calibration | null;
}
export interface Calibration {
  readonly tap: string;
  /** Half of the 95 % interval after it, here. */
  readonly half: number;
  readonly settles: boolean;
}
export const repeatsAtMost = 50;
/** The same result as it would be with a tap calibrated; undefined where that can't be done or brings nothing. */
export type WithCalibrated = (tap: string) => Judgeable | undefined;
export type Judgeable = Pick<Measured, 'value' | 'budget'>;

export function settlingOf(finding: Judgeable, limit: Limit, withCalibrated?: WithCalibrated): Settling {
  const bound = nearestBound(finding.value, limit);
  const lines = budgetAgainst(finding, limit, bound);
  const half = halfWidth(lines);
  const shrunk = (share: number) => withLines(finding, limit, (line) => ({ ...line, u: line.u * share }));
  return {
    distance: Math.abs(finding.value - bound),
    bound,
    half,
    dominant: dominantOf(lines),
    wantedHalf: half * largestShare((share) => decided(shrunk(share))),
    repeats: repeatsOf(finding, limit),
    calibration: withCalibrated ? calibrationOf(finding, limit, withCalibrated) : null,
  };
}
interface Case {
  readonly finding: Judgeable;
  readonly limit: Limit;
}
const decided = ({ finding, limit }: Case): boolean => isDecided(finding, limit);
/** The same case with every line changed, the limit's doubt too. */
function withLines(
  { value, budget }: Judgeable,
  limit: Limit,
  change: (line: BudgetLine) => BudgetLine,
): Case {
  const share = limit.doubt && change({ ...blank, u: limit.doubt.share }).u;
  return {
    finding: { value, budget: budget.map(change) },
    limit: share && limit.doubt ? { ...limit, doubt: { ...limit.doubt, share } } : limit,
  };
}
const blank: BudgetLine = {
  source: '',
  u: 0,
  shape: 'rectangular',
  dof: Number.POSITIVE_INFINITY,
  origin: 'limit',
};
function dominantOf(lines: readonly BudgetLine[]): Settling['dominant'] {
  const variance = lines.reduce((sum, { u }) => sum + u ** 2, 0);
  if (!(variance > 0)) return null;
  const first = lines.reduce((most, line) => (line.u > most.u ? line : most));
  return { source: first.source, share: first.u ** 2 / variance };
}
/** Largest share of 0..1 for which `holds`; it holds for all smaller ones. */
function largestShare(holds: (share: number) => boolean): number {
  let [low, high] = [0, 1];
  for (let i = 0; i < 9; i++) {
    const middle = (low + high) / 2;
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return low;
}
/** Averaging n runs shrinks what scatters from run to run by the root of n; what is fixed stays. */
function repeatsOf(finding: Judgeable, limit: Limit): number | null {
  const averaged = (n: number) => ({
    finding: { value: finding.value, budget: finding.budget.map((line) => overRuns(line, n)) },
    limit,
  });
  if (!finding.budget.some(scatters) || !decided(averaged(repeatsAtMost))) return null;
  let [too, enough] = [1, repeatsAtMost];
  while (enough - too > 1) {
    const middle = Math.floor((too + enough) / 2);
    if (decided(averaged(middle))) enough = middle;
    else too = middle;
  }
  return enough;
}
const scatters = ({ shape }: BudgetLine): boolean => shape === 'student';
const overRuns = (line: BudgetLine, n: number): BudgetLine =>
  scatters(line) ? { ...line, u: line.u / Math.sqrt(n), dof: line.dof * n } : line;

/** Of the taps that are declared only, the one whose calibration leaves least. */
function calibrationOf(
  { value, budget }: Judgeable,
  limit: Limit,
  withCalibrated: WithCalibrated,
): Calibration | null {
  const bound = nearestBound(value, limit);
  const taps = [...new Set(budget.flatMap((line) => declaredTap(line) ?? []))];
  const found = taps.flatMap((tap) => {
    const after = withCalibrated(tap);
    if (!after) return [];
    // Its value stays: nobody knows yet which way the calibration would move it.
    const moved = { value, budget: after.budget };
    return [{ tap, half: halfWidth(budgetAgainst(moved, limit, bound)), settles: isDecided(moved, limit) }];
  });
  return found.toSorted((a, b) => a.half - b.half)[0] ?? null;
}
