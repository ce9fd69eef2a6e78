// SPDX-License-Identifier: MIT
// A result over its runs as geometry: individuals with their intervals, the band and limits, the line broken at every
// repair, the moving ranges. View boxes 760 x 224 and 760 x 112. Judges nothing.
import { individualsChart, type IndividualsChart } from '#core/history/individuals-chart';
import type { HistoryPoint } from '#core/history/part-history';
import { decimalsFor, figure, readingWords, shownUnit } from './figures.ts';
import type { PartTrend } from './part-trend.ts';
import { rangePlot, type RangePlot } from './range-plot.ts';
import {
  dateTicks,
  near,
  scales,
  trendEdges,
  yTicks,
  type Bounds,
  type Scales,
  type TrendTick,
} from './trend-scale.ts';

export interface TrendDot {
  readonly runId: string;
  readonly x: number;
  readonly y: number;
  readonly low: number;
  readonly high: number;
  /** Hollow: it made the limits of the chart. Out: beyond them. */
  readonly look: 'plain' | 'hollow' | 'out';
}
export interface LimitMark {
  readonly y: number;
  readonly text: string;
  /** Bad side of it. */
  readonly side: 'above' | 'below';
}
export interface TrendPlot {
  readonly dots: readonly TrendDot[];
  readonly lines: readonly string[];
  readonly repairs: readonly {
    readonly x: number;
    readonly words: string;
    readonly anchor: 'start' | 'end';
  }[];
  readonly band: {
    readonly x: number;
    readonly y: number;
    readonly height: number;
    readonly centreY: number;
  } | null;
  readonly bandWords: string;
  readonly limits: readonly LimitMark[];
  readonly xTicks: readonly TrendTick[];
  readonly yTicks: readonly TrendTick[];
  readonly unit: string;
  readonly ranges: RangePlot | null;
  readonly rows: readonly { readonly when: string; readonly value: string; readonly note: string }[];
  /** One sentence that stands for the picture. */
  readonly words: string;
}
const { left, right } = trendEdges;

/** Null before the first run. `limit`: the one that holds, in the result's unit. */
export function trendPlot(trend: PartTrend, unit: string, limit: Bounds | null): TrendPlot | null {
  const points = trend.segments.flatMap((segment) => segment.points);
  if (points.length === 0) return null;
  const { points: current } = trend.segments[trend.segments.length - 1];
  const begins = points.length - current.length;
  const chart = chartOf(trend);
  const bounds = near(limit, points, chart);
  const at = scales(points, chart, bounds);
  const { say, sayWidth, shown } = sayer(points[0], unit);
  const looks = points.map((_, i) => lookOf(trend, i - begins));
  const values = current.map(({ finding }) => finding.value);
  return {
    dots: points.map((point, i) => dotOf(point, at.x(i), at, looks[i])),
    lines: lines(trend, at),
    repairs: repairMarks(trend, at),
    band: chart && bandOf(chart, at.x(begins) - 14, at),
    bandWords: chart ? `${say(chart.centre)} ± ${sayWidth(3 * chart.sigma)}` : '',
    limits: bounds.map(({ value, side }) => ({ y: at.y(value), side, text: `limit ${say(value)}` })),
    xTicks: dateTicks(points, at),
    yTicks: yTicks(at, shown),
    unit: shown.unit,
    ranges: rangePlot({ values, chart, begins, at, shown }),
    rows: points.map((point, i) => rowOf(point, unit, looks[i])),
    words: `${points.length} runs, the last ${say(points[points.length - 1].finding.value)} ${shown.unit}. ${trend.words.join(' ')}`,
  };
}
/** Figures in the shown unit, with the decimals that the first run's interval earns. */
function sayer({ finding }: HistoryPoint, unit: string) {
  const shown = shownUnit(unit, finding.value);
  const decimals = decimalsFor(shown.difference((finding.interval[1] - finding.interval[0]) / 2));
  const say = (value: number) => figure(shown.value(value), decimals);
  const sayWidth = (width: number) => figure(shown.difference(width), decimals);
  return { say, sayWidth, shown };
}
const dotOf = (
  { runId, finding }: HistoryPoint,
  x: number,
  { y }: Scales,
  look: TrendDot['look'],
): TrendDot => ({
  runId,
  x,
  y: y(finding.value),
  low: y(finding.interval[0]),
  high: y(finding.interval[1]),
  look,
});
const bandOf = ({ lower, upper, centre }: IndividualsChart, x: number, { y }: Scales) => ({
  x,
  y: y(upper),
  height: y(lower) - y(upper),
  centreY: y(centre),
});
const notes = { plain: '', hollow: 'made the limits', out: 'outside' } as const;
const rowOf = ({ at, finding }: HistoryPoint, unit: string, look: TrendDot['look']) => ({
  when: at.slice(0, 10),
  value: readingWords(finding.value, finding.interval, unit),
  note: notes[look],
});
/** The limits are of the last segment's first runs, once there are enough. */
function chartOf({ segments, first, kept }: PartTrend): IndividualsChart | null {
  const { points } = segments[segments.length - 1];
  if (points.length < first && !kept) return null;
  const values = points.slice(0, first).map(({ finding }) => finding.value);
  return values.length < 2 ? null : individualsChart(values);
}
/** `within`: place in the last segment, below 0 before it. */
function lookOf({ first, drift, kept }: PartTrend, within: number): TrendDot['look'] {
  if (within < 0 || (drift === null && kept === null)) return 'plain';
  if (within < first) return 'hollow';
  return drift?.outside.includes(within) ? 'out' : 'plain';
}
function lines({ segments }: PartTrend, at: Scales): string[] {
  let index = 0;
  return segments.map(({ points }) => {
    const ends = points.map(({ finding }) => `${at.x(index++).toFixed(1)} ${at.y(finding.value).toFixed(1)}`);
    return ends.length > 1 ? `M${ends.join('L')}` : '';
  });
}
function repairMarks({ segments }: PartTrend, at: Scales) {
  let before = 0;
  return segments.flatMap(({ since, points }) => {
    const x = (at.x(before) + at.x(before - 1)) / 2;
    before += points.length;
    if (!since) return [];
    return [
      { x, words: since.words, anchor: x > (left + right) / 2 ? ('end' as const) : ('start' as const) },
    ];
  });
}
