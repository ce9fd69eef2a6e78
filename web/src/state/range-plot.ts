// SPDX-License-Identifier: MIT
// The moving ranges of a trend as geometry, below its individuals and on the same places along the runs.
import { movingRanges, type IndividualsChart } from '#core/history/individuals-chart';
import type { ShownUnit } from '#core/units/shown-unit';
import { decimalsFor, figure } from './figures.ts';
import { trendEdges, type Scales } from './trend-scale.ts';

export interface RangePlot {
  readonly bars: readonly { readonly x: number; readonly y: number; readonly out: boolean }[];
  readonly meanY: number;
  readonly limitY: number;
  readonly limitWords: string;
}
const { rangeTop, rangeBottom } = trendEdges;

export interface RangesOf {
  readonly values: readonly number[];
  readonly chart: IndividualsChart | null;
  /** Place of the first value along the runs. */
  readonly begins: number;
  readonly at: Scales;
  readonly shown: ShownUnit;
}
/** The range between two runs stands under the later one. Null with fewer than three runs. */
export function rangePlot({ values, chart, begins, at, shown }: RangesOf): RangePlot | null {
  if (!chart || values.length < 3) return null;
  const ranges = movingRanges(values);
  const { meanRange, rangeLimit } = chart;
  const most = Math.max(rangeLimit, ...ranges) * 1.1 || 1;
  const y = (range: number) => rangeBottom - (range / most) * (rangeBottom - rangeTop);
  const bars = ranges.map((range, i) => ({ x: at.x(begins + i + 1), y: y(range), out: range > rangeLimit }));
  const limitWords = figure(shown.difference(rangeLimit), decimalsFor(shown.difference(rangeLimit)));
  return { bars, meanY: y(meanRange), limitY: y(rangeLimit), limitWords };
}
