// SPDX-License-Identifier: MIT
// What would settle an undecided result, as numbers: which line rules and its share, how many runs averaged would
// do, what the uncertainty must fall to, what calibrating a tap would bring. By the same propagation that the
// verdict is made with. It writes no words and decides nothing.
import { halfWidth } from '../measurements/coverage-interval.ts';
import type { BudgetLine, Measured } from '../measurements/measurement.ts';
import { budgetAgainst, isDecided, nearestBound } from './chance-out.ts';
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
/** Share of a tap's gain and offset errors that is left after a calibration against a hand-held meter, by kind of
 *  tap: planning figures of the reference rig, computed, not measured; 0.6 for a tap not named. */
const leftAfterCalibration: readonly (readonly [tap: RegExp, share: number])[] = [
  [/Voltage$/, 0.57],
  [/^packCurrentNarrow$/, 0.67],
  [/^packCurrentWide$/, 0.44],
  [/^thermistor/, 0.5],
];
const leftOtherwise = 0.6;
type Judgeable = Pick<Measured, 'value' | 'budget'>;

export function settlingOf(finding: Judgeable, limit: Limit): Settling {
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
    calibration: calibrationOf(finding, limit, bound),
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

/** The declared tap with the largest lines; none when its lines come from a calibration already. */
function calibrationOf(finding: Judgeable, limit: Limit, bound: number): Calibration | null {
  const taps = [...new Set(finding.budget.flatMap((line) => tapOf(line) ?? []))];
  const best = taps
    .map((tap) => ({ tap, after: calibrated(finding, tap) }))
    .map(({ tap, after }) => ({ tap, after, half: halfWidth(budgetAgainst(after, limit, bound)) }))
    .toSorted((a, b) => a.half - b.half)[0];
  if (!best) return null;
  return { tap: best.tap, half: best.half, settles: isDecided(best.after, limit) };
}
const tapOf = ({ source, origin }: BudgetLine): string | undefined =>
  origin.startsWith('calibration') ? undefined : /^(?:gain|offset) of (\S+)$/.exec(source)?.[1];
function calibrated({ value, budget }: Judgeable, tap: string): Judgeable {
  const left = leftAfterCalibration.find(([of]) => of.test(tap))?.[1] ?? leftOtherwise;
  return {
    value,
    budget: budget.map((line) => (tapOf(line) === tap ? { ...line, u: line.u * left } : line)),
  };
}
