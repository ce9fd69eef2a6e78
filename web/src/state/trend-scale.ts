// SPDX-License-Identifier: MIT
// The scales of a trend picture: where a run and a value lie, ticks of days and values, which limits lie near enough
// to be drawn. It knows points and bounds, not what they mean.
import type { IndividualsChart } from '#core/history/individuals-chart';
import type { HistoryPoint } from '#core/history/part-history';
import type { ShownUnit } from '#core/units/shown-unit';
import { figure } from './figures.ts';
import { niceSteps, stepDecimals } from './verdict-picture.ts';

export interface TrendTick {
  readonly at: number;
  readonly text: string;
}
export const trendEdges = {
  left: 56,
  right: 620,
  top: 14,
  bottom: 196,
  rangeTop: 18,
  rangeBottom: 96,
} as const;
const { left, right, top, bottom } = trendEdges;

export interface Bounds {
  readonly min?: number;
  readonly max?: number;
}
export interface Scales {
  readonly x: (index: number) => number;
  readonly y: (value: number) => number;
  readonly low: number;
  readonly high: number;
}
export function scales(
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
export function near(limit: Bounds | null, points: readonly HistoryPoint[], chart: IndividualsChart | null) {
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
const ticksAtMost = 6;
export function dateTicks(points: readonly HistoryPoint[], at: Scales): TrendTick[] {
  const every = Math.ceil(points.length / ticksAtMost);
  const day = (iso: string) =>
    new Date(iso).toLocaleDateString('en-GB', { day: 'numeric', month: 'short', timeZone: 'UTC' });
  return points
    .map((point, i) => ({ at: at.x(i), text: day(point.at), i }))
    .filter(({ i }) => i % every === 0)
    .filter(({ text }, i, kept) => i === 0 || kept[i - 1].text !== text);
}
/** Round in the shown unit. */
export function yTicks({ low, high, y }: Scales, shown: ShownUnit): TrendTick[] {
  const steps = niceSteps(shown.value(low), shown.value(high));
  const some = steps.length > 5 ? steps.filter((_, i) => i % 2 === 0) : steps;
  const decimals = stepDecimals(steps[1] - steps[0]);
  const own = (step: number) => low + (step - shown.value(low)) / shown.difference(1);
  return some.map((step) => ({ at: y(own(step)), text: figure(step, decimals) }));
}
