// SPDX-License-Identifier: MIT
// Tells drift and step from scatter in what followed a baseline, with stated rates of false alarm: a trend test and
// a change point over all runs, and the baseline's control limits for the last runs. Numbers only; judges no part.
import { changePointOf } from './change-point.ts';
import { individualsChart, meanOf, type IndividualsChart } from './individuals-chart.ts';
import { trendOf } from './trend-test.ts';

export type DriftKind = 'too few' | 'scatter' | 'one outside' | 'step' | 'drift';
export interface DriftAnswer {
  readonly kind: DriftKind;
  readonly words: string;
  readonly chart: IndividualsChart | null;
  /** Positions, counted from the first run of the baseline, of later runs outside the limits. */
  readonly outside: readonly number[];
  /** Slope by the run; present for a drift. */
  readonly perRun?: number;
  /** Runs before the step and its size; present for a step. */
  readonly step?: { readonly after: number; readonly by: number };
}
/** Greatest chance, in one look, that trend or change point speaks for a part that only scatters: half to each. */
export const falseAlarm = 0.01;
interface OutsideRate {
  readonly one: number;
  readonly two: number;
}
/** How often one later run of an unchanged part lies outside limits made from so many first runs, and two in a row on
 *  one side: by simulation of a million normal series, see the test beside. From endless runs it would be 0.27 %. */
const outsideRates: readonly (readonly [firstRuns: number, rate: OutsideRate])[] = [
  [2, { one: 0.2006, two: 0.0858 }],
  [3, { one: 0.1122, two: 0.0337 }],
  [4, { one: 0.0768, two: 0.0173 }],
  [5, { one: 0.057, two: 0.0103 }],
];
/** More first runs than the table has make it rarer: told as for the most there are. */
export const outsideRate = (firstRuns: number): OutsideRate =>
  outsideRates.findLast(([count]) => count <= firstRuns)![1];

export function driftOf(baseline: readonly number[], later: readonly number[], unit: string): DriftAnswer {
  if (baseline.length < 2) return plain('too few', 'A baseline of two runs at least comes first.', null, []);
  const chart = individualsChart(baseline);
  const outside = later.flatMap((value, i) => (sideOf(value, chart) === 0 ? [] : [baseline.length + i]));
  if (later.length === 0) return plain('too few', 'No run since the baseline.', chart, outside);
  const values = [...baseline, ...later];
  const sides = later.slice(-2).map((value) => sideOf(value, chart));
  const twoOut = sides.length === 2 && sides[0] !== 0 && sides[0] === sides[1];
  const spoken = trendOf(values).p <= falseAlarm / 2 || (changePointOf(values)?.p ?? 1) <= falseAlarm / 2;
  if (spoken) return movedAnswer(values, unit, chart, outside, rateWords(falseAlarm));
  if (twoOut) return movedAnswer(values, unit, chart, outside, rateWords(outsideRate(baseline.length).two));
  if (sides.at(-1) !== 0) return plain('one outside', outsideWords(chart, unit), chart, outside);
  return plain('scatter', scatterWords(chart, unit), chart, outside);
}
/** -1 below the limits, 1 above, 0 within. */
const sideOf = (value: number, { lower, upper }: IndividualsChart): number =>
  value > upper ? 1 : value < lower ? -1 : 0;
const plain = (
  kind: DriftKind,
  words: string,
  chart: IndividualsChart | null,
  outside: readonly number[],
): DriftAnswer => ({ kind, words, chart, outside });

/** It moved: by and by or at once, whichever leaves less of the squares. */
function movedAnswer(
  values: readonly number[],
  unit: string,
  chart: IndividualsChart,
  outside: readonly number[],
  rate: string,
): DriftAnswer {
  const slope = bestSlope(values);
  const step = bestStep(values);
  if (slope.left < step.left) {
    const since = slope.from === 1 ? 'from the first run on' : `since run ${slope.from}`;
    const words = `It drifts by ${signed(slope.perRun)} ${unit} a run ${since}. ${rate}`;
    return { kind: 'drift', words, chart, outside, perRun: slope.perRun };
  }
  const words = `It stepped by ${signed(step.by)} ${unit} after run ${step.after}. ${rate} Was something changed then? Note a repair, and its history begins anew.`;
  return { kind: 'step', words, chart, outside, step: { after: step.after, by: step.by } };
}
interface Slope {
  /** The run it sets out from, counted from 1. */
  readonly from: number;
  readonly perRun: number;
  readonly left: number;
}
/** Level up to some run, then a straight line; least squares over the run it sets out from. */
export function bestSlope(values: readonly number[]): Slope {
  const slopes = values.slice(0, -1).map((_, from): Slope => {
    const x = values.map((_each, i) => Math.max(0, i - from));
    const [xMean, yMean] = [meanOf(x), meanOf(values)];
    const sxx = x.reduce((sum, each) => sum + (each - xMean) ** 2, 0);
    const sxy = x.reduce((sum, each, i) => sum + (each - xMean) * (values[i] - yMean), 0);
    const left = squares(values) - sxy ** 2 / sxx;
    return { from: from + 1, perRun: sxy / sxx, left };
  });
  return slopes.reduce((best, slope) => (slope.left < best.left ? slope : best));
}
interface Step {
  readonly after: number;
  readonly by: number;
  readonly left: number;
}
export function bestStep(values: readonly number[]): Step {
  const steps = values.slice(0, -1).map((_, i): Step => {
    const [before, then] = [values.slice(0, i + 1), values.slice(i + 1)];
    return { after: i + 1, by: meanOf(then) - meanOf(before), left: squares(before) + squares(then) };
  });
  return steps.reduce((best, step) => (step.left < best.left ? step : best));
}
const squares = (values: readonly number[]): number => {
  const centre = meanOf(values);
  return values.reduce((sum, value) => sum + (value - centre) ** 2, 0);
};
const rateWords = (rate: number): string =>
  `An unchanged part is called so in at most ${Number((100 * rate).toPrecision(2))} of 100 looks.`;
const outsideWords = ({ count, lower, upper }: IndividualsChart, unit: string): string =>
  `The last run lies outside ${figure(lower)} to ${figure(upper)} ${unit}. From so few first runs that happens to ${Math.round(outsideRate(count).one * 100)} of 100 runs of an unchanged part: run again, two in a row count.`;
const scatterWords = ({ lower, upper }: IndividualsChart, unit: string): string =>
  `Scatter only: the last run lies within ${figure(lower)} to ${figure(upper)} ${unit}, and no trend is seen.`;
const figure = (value: number): string => Number(value.toPrecision(4)).toString();
const signed = (value: number): string =>
  `${value < 0 ? '\u2212' : '+'}${Number(Math.abs(value).toPrecision(2))}`;
