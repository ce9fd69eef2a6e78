// SPDX-License-Identifier: MIT
// Chance that the true value lies outside a limit, from the finding's budget; a limit carried by a model brings
// its own line. Probabilities after JCGM 106:2012, distributions after JCGM 101. It decides nothing.
import { chanceBeyond, halfWidth } from '../measurements/coverage-interval.ts';
import type { BudgetLine, Measured } from '../measurements/measurement.ts';
import type { Limit } from './limit.ts';

/** Greatest accepted chance of passing a part that is out, or of failing one that is in. */
export const acceptedRisk = 0.025;
/** Slack of the numeric propagation, so that a bound that lies on the limit is decided. */
export const numericSlack = 1e-4;

type Judgeable = Pick<Measured, 'value' | 'budget'>;

export function chanceOut(finding: Judgeable, limit: Limit): number {
  const { min, max } = limit;
  const below = min === undefined ? 0 : chanceBeyond(budgetAgainst(finding, limit, min), finding.value - min);
  const above = max === undefined ? 0 : chanceBeyond(budgetAgainst(finding, limit, max), max - finding.value);
  return Math.min(1, below + above);
}
/** True once a verdict is certain enough, either way. Where the farther bound is out of reach, one propagation at
 *  the nearer one tells it; the same answer as the chances themselves, twenty times faster. */
export function isDecided(finding: Judgeable, limit: Limit): boolean {
  const bound = nearestBound(finding.value, limit);
  const distance = Math.abs(finding.value - bound);
  const u = Math.hypot(...budgetAgainst(finding, limit, bound).map((line) => line.u));
  if (farther(finding.value, limit) > distance + outOfReach * u)
    return halfWidth(budgetAgainst(finding, limit, bound), 1 - 2 * (acceptedRisk + numericSlack)) <= distance;
  const out = chanceOut(finding, limit);
  return Math.min(out, 1 - out) <= acceptedRisk + numericSlack;
}
/** Standard uncertainties beyond the nearer bound at which the farther one no longer adds to the chance. */
const outOfReach = 12;
export function nearestBound(value: number, { min, max }: Limit): number {
  if (min === undefined) return max ?? Number.POSITIVE_INFINITY;
  if (max === undefined) return min;
  return Math.abs(value - min) <= Math.abs(value - max) ? min : max;
}
function farther(value: number, { min, max }: Limit): number {
  if (min === undefined || max === undefined) return Number.POSITIVE_INFINITY;
  return Math.max(Math.abs(value - min), Math.abs(value - max));
}
/** The finding's budget and, for a limit carried by a model, the model's line at that bound. */
export function budgetAgainst({ budget }: Judgeable, { doubt }: Limit, bound: number): readonly BudgetLine[] {
  if (!doubt) return budget;
  const u = Math.abs(bound) * doubt.share;
  return [
    ...budget,
    { source: doubt.words, u, shape: 'rectangular', dof: Number.POSITIVE_INFINITY, origin: 'limit' },
  ];
}
