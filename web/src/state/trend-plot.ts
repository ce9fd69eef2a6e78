// SPDX-License-Identifier: MIT
// A result over its runs as geometry: individuals with their intervals, the band and limits, the line broken at every
// repair, and the moving ranges below. View boxes 760 x 236 and 760 x 120. Judges nothing.
import { individualsChart, movingRanges, type IndividualsChart } from '#core/history/individuals-chart';
import type { HistoryPoint } from '#core/history/part-history';
import { decimalsFor, figure, shownUnit } from './figures.ts';
import type { PartTrend } from './part-trend.ts';
import { niceSteps, stepDecimals } from './verdict-picture.ts';

export interface TrendDot {
  readonly runId: string;
  readonly x: number;
  readonly y: number;
  readonly low: number;
  readonly high: number;
  /** Hollow: it made the limits of the chart. Out: beyond them. */
  readonly look: 'plain' | 'hollow' | 'out';
}
export interface TrendTick {
  readonly at: number;
  readonly text: string;
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
export interface RangePlot {
  readonly bars: readonly { readonly x: number; readonly y: number; readonly out: boolean }[];
  readonly meanY: number;
  readonly limitY: number;
  readonly limitWords: string;
}
export const trendEdges = {
  left: 56,
  right: 620,
  top: 14,
  bottom: 196,
  rangeTop: 18,
  rangeBottom: 96,
} as const;
const { left, right, top, bottom, rangeTop, rangeBottom } = trendEdges;

export interface Bounds {
  readonly min?: number;
  readonly max?: number;
}
/** Null before the first run. `limit`: the one that holds, in the result's unit. */
export function trendPlot(trend: PartTrend, unit: string, limit: Bounds | null): TrendPlot | null {
  const points = trend.segments.flatMap((segment) => segment.points);
  if (points.length === 0) return null;
  const shown = shownUnit(unit, points[0].finding.value);
  const chart = chartOf(trend);
  const bounds = near(limit, points, chart);
  const at = scales(points, chart, bounds);
  const last = trend.segments[trend.segments.length - 1];
  const begins = points.length - last.points.length;
  const look = lookOf(trend, begins);
  const decimals = decimalsFor(
    (points[0].finding.interval[1] - points[0].finding.interval[0]) * 0.5 * shown.factor,
  );
  const say = (value: number) => figure(value * shown.factor, decimals);
  return {
    dots: points.map((point, i) => ({
      runId: point.runId,
      x: at.x(i),
      y: at.y(point.finding.value),
      low: at.y(point.finding.interval[0]),
      high: at.y(point.finding.interval[1]),
      look: look(i),
    })),
    lines: lines(trend, at),
    repairs: repairMarks(trend, at),
    band: chart && {
      x: at.x(begins) - 14,
      y: at.y(chart.upper),
      height: at.y(chart.lower) - at.y(chart.upper),
      centreY: at.y(chart.centre),
    },
    bandWords: chart ? `${say(chart.centre)} ± ${figure(3 * chart.sigma * shown.factor, decimals)}` : '',
    limits: bounds.map(({ value, side }) => ({ y: at.y(value), side, text: `limit ${say(value)}` })),
    xTicks: dateTicks(points, at),
    yTicks: yTicks(at, shown.factor),
    unit: shown.unit,
    ranges: rangePlot(trend, begins, at, shown.factor),
    rows: points.map((point, i) => ({
      when: point.at.slice(0, 10),
      value: `${say(point.finding.value)} ± ${say((point.finding.interval[1] - point.finding.interval[0]) / 2)} ${shown.unit}`,
      note: { plain: '', hollow: 'made the limits', out: 'outside' }[look(i)],
    })),
    words: `${points.length} runs, the last ${say(points[points.length - 1].finding.value)} ${shown.unit}. ${trend.words.join(' ')}`,
  };
}
/** The limits are of the last segment's first runs, once there are enough. */
function chartOf({ segments, first, kept }: PartTrend): IndividualsChart | null {
  const { points } = segments[segments.length - 1];
  if (points.length < first && !kept) return null;
  const values = points.slice(0, first).map(({ finding }) => finding.value);
  return values.length < 2 ? null : individualsChart(values);
}
function lookOf({ first, drift, kept }: PartTrend, begins: number) {
  const judged = drift !== null || kept !== null;
  return (i: number): TrendDot['look'] => {
    const within = i - begins;
    if (within < 0 || !judged) return 'plain';
    if (within < first) return 'hollow';
    return drift?.outside.includes(within) ? 'out' : 'plain';
  };
}
interface Scales {
  readonly x: (index: number) => number;
  readonly y: (value: number) => number;
  readonly low: number;
  readonly high: number;
}
function scales(
  points: readonly HistoryPoint[],
  chart: IndividualsChart | null,
  bounds: readonly { readonly value: number }[],
): Scales {
  const all = [
    ...points.flatMap(({ finding }) => finding.interval),
    ...(chart ? [chart.lower, chart.upper] : []),
    ...bounds.map(({ value }) => value),
  ];
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const room = 0.08 * (most - least || Math.abs(most) || 1);
  const [low, high] = [least - room, most + room];
  const count = Math.max(points.length, 6);
  return {
    x: (index) => left + 20 + (index / (count - 1)) * (right - left - 40),
    y: (value) => bottom - ((value - low) / (high - low)) * (bottom - top),
    low,
    high,
  };
}
/** A limit far from the runs would flatten them: it is left to the words then. */
function near(limit: Bounds | null, points: readonly HistoryPoint[], chart: IndividualsChart | null) {
  const values = [
    ...points.flatMap(({ finding }) => finding.interval),
    ...(chart ? [chart.lower, chart.upper] : []),
  ];
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const reach = 3 * (most - least);
  const sides = [
    { value: limit?.min, side: 'below' as const },
    { value: limit?.max, side: 'above' as const },
  ];
  return sides.flatMap(({ value, side }) =>
    value !== undefined && value > least - reach && value < most + reach ? [{ value, side }] : [],
  );
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
const ticksAtMost = 6;
function dateTicks(points: readonly HistoryPoint[], at: Scales): TrendTick[] {
  const every = Math.ceil(points.length / ticksAtMost);
  const day = (iso: string) =>
    new Date(iso).toLocaleDateString('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' });
  return points
    .map((point, i) => ({ at: at.x(i), text: day(point.at), i }))
    .filter(({ i }) => i % every === 0)
    .filter(({ text }, i, kept) => i === 0 || kept[i - 1].text !== text);
}
function yTicks({ low, high, y }: Scales, factor: number): TrendTick[] {
  const steps = niceSteps(low * factor, high * factor);
  const some = steps.length > 5 ? steps.filter((_, i) => i % 2 === 0) : steps;
  const decimals = stepDecimals(steps[1] - steps[0]);
  return some.map((step) => ({ at: y(step / factor), text: figure(step, decimals) }));
}
/** Of the runs since the last repair; the range between two runs stands under the later one. */
function rangePlot(trend: PartTrend, begins: number, at: Scales, factor: number): RangePlot | null {
  const { points } = trend.segments[trend.segments.length - 1];
  const values = points.map(({ finding }) => finding.value);
  const chart = chartOf(trend);
  if (!chart || values.length < 3) return null;
  const ranges = movingRanges(values);
  const most = Math.max(chart.rangeLimit, ...ranges) * 1.1 || 1;
  const y = (range: number) => rangeBottom - (range / most) * (rangeBottom - rangeTop);
  return {
    bars: ranges.map((range, i) => ({ x: at.x(begins + i + 1), y: y(range), out: range > chart.rangeLimit })),
    meanY: y(chart.meanRange),
    limitY: y(chart.rangeLimit),
    limitWords: figure(chart.rangeLimit * factor, decimalsFor(chart.rangeLimit * factor)),
  };
}
