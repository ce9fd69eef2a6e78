// SPDX-License-Identifier: MIT
// One run less another of the same check: what both share is taken out, the rest is put together after JCGM 100 (5.1.2
// and Welch-Satterthwaite, G.4), and where runs scatter by more than their budgets say, the scatter counts. Pure.
import type { BudgetLine } from '../measurements/measurement.ts';
import { changeOf, sharedWith, type Change, type Part } from './change.ts';
import { individualsChart } from './individuals-chart.ts';
import type { HistoryPoint } from './part-history.ts';

/** Fewer runs tell too little of how much a result scatters from run to run: common practice, no source. */
export const runsForScatter = 5;
/** Degrees of freedom of a spread from moving ranges, as a share of n - 1; from memory. */
const rangeFreedom = 0.62;

export interface Difference extends Change {
  /** 'unknown': too few runs; 'within budgets': the runs scatter no more than their budgets say. */
  readonly scatter: 'unknown' | 'within budgets' | 'counts';
}
/** `a` less `b`. `history`: values of the same result of that part in order of time, `a` and `b` among them. */
export function differenceOf(a: HistoryPoint, b: HistoryPoint, history: readonly number[]): Difference {
  const sameRig = a.rigSerial !== '' && a.rigSerial === b.rigSerial;
  const split = sharedWith(a.finding, b.finding, sameRig);
  const own = [...split.own, ...sharedWith(b.finding, a.finding, sameRig).own];
  const { scatter, parts } = newEachRun(own, history);
  const rest = { u: split.restU, dof: Number.POSITIVE_INFINITY };
  return { ...changeOf(a.finding.value - b.finding.value, [...parts, rest], split.shared), scatter };
}
/** The budgets of both runs, or the scatter seen where that is more. */
function newEachRun(own: readonly BudgetLine[], history: readonly number[]) {
  const parts: readonly Part[] = own;
  if (history.length < runsForScatter) return { scatter: 'unknown', parts } as const;
  const seen = individualsChart(history).sigma * Math.SQRT2;
  if (seen <= Math.hypot(...own.map(({ u }) => u))) return { scatter: 'within budgets', parts } as const;
  const dof = Math.max(1, rangeFreedom * (history.length - 1));
  return { scatter: 'counts', parts: [{ u: seen, dof }] as readonly Part[] } as const;
}
