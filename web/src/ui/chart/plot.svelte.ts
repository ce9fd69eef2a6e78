// SPDX-License-Identifier: MIT
// One uPlot as a Svelte attachment: built once, drawn again on an animation frame when samples came or another part is
// looked at, resized with its box, taken down with it. Only this folder knows uPlot.
import { untrack } from 'svelte';
import type { Attachment } from 'svelte/attachments';
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import { chartColumns } from '../../state/chart-columns.ts';
import type { LevelLines } from '../../state/chart-levels.ts';
import type { Stretch } from '../../state/chart-measure.ts';
import type { ChartUnit } from '../../state/chart-units.ts';
import { spanOf, type ChartRange } from '../../state/chart-window.ts';
import { amountScale, stretchedAtMost } from '../../state/level-scale.ts';
import type { Gap, TraceMark } from '../../state/trace-book.svelte.ts';
import { amountAxis, timeAxis } from './axes.ts';
import { overlays } from './overlays.ts';
import { onTheme, token } from './palette.ts';

export interface PlotLine {
  readonly columns: () => Stretch;
  /** Where this line is broken. */
  readonly gaps: () => readonly Gap[];
  /** Colour token. */
  readonly colour: string;
  readonly dash?: readonly number[];
}
export interface PlotSpec {
  /** The first is drawn over the others. */
  readonly lines: readonly PlotLine[];
  readonly unit: ChartUnit;
  readonly range: () => ChartRange;
  /** Nothing newer is drawn. */
  readonly nowS: () => number;
  readonly held: () => boolean;
  /** Read to be called again when there is more to draw. */
  readonly version: () => number;
  /** Cut out of the whole plot. */
  readonly gaps: () => readonly Gap[];
  readonly marks: () => readonly (TraceMark & { readonly dash?: readonly number[] })[];
  readonly stretch?: ChartRange;
  /** Results that belong on this trace. */
  readonly levels: () => readonly LevelLines[];
  /** The stretch is what is looked at. */
  readonly still: boolean;
  readonly running: boolean;
  readonly first: boolean;
  readonly last: boolean;
}
/** Beside the drawn area, in pixels: figures at the left, room for the last second's label at the right. */
export const besides = { left: 52, right: 24 } as const;
/** Single values get a dot from so many pixels apart on. */
const dotPixels = 10;

function apart(chart: uPlot, index: number): boolean {
  const [times] = chart.data;
  const count = Array.from(chart.data[index]).filter((value) => value !== undefined).length;
  if (count < 2) return true;
  const [from, to] = [times[0], times[times.length - 1]].map((atS) => chart.valToPos(atS, 'x'));
  return (to - from) / (count - 1) > dotPixels;
}
/** Mean, least and most of one line. */
function seriesOf({ colour: name, dash }: PlotLine): uPlot.Series[] {
  const colour = () => token(name);
  const band = { stroke: 'transparent', points: { show: false }, spanGaps: false };
  const points = { show: apart, size: 5, fill: colour };
  return [{ stroke: colour, width: 2.2, dash: dash && [...dash], points, spanGaps: false }, band, band];
}
/** Least to most, paler where several lie over each other. */
const bandOf = ({ colour }: PlotLine, index: number, all: readonly PlotLine[]): uPlot.Band => ({
  series: [3 * index + 3, 3 * index + 2],
  fill: () => `color-mix(in srgb, ${token(colour)} ${all.length > 1 ? 16 : 28}%, transparent)`,
});
function options(element: HTMLElement, spec: PlotSpec): uPlot.Options {
  const times = stretchedAtMost[spec.still ? 'still' : 'whole'];
  const lines = spec.lines.toReversed();
  return {
    ...sizeOf(element),
    padding: [spec.first ? 20 : 6, besides.right, 2, 0],
    legend: { show: false },
    cursor: { show: false },
    scales: {
      x: { time: false, range: () => [spec.range().fromS, spec.range().toS] },
      y: { range: (_chart, least, most) => amountScale(least, most, spec.levels(), times) },
    },
    axes: [timeAxis(spec.last), amountAxis(besides.left)],
    series: [{}, ...lines.flatMap(seriesOf)],
    bands: lines.map(bandOf),
    hooks: overlays(spec),
  };
}
const sizeOf = (element: HTMLElement) => ({
  width: Math.max(element.clientWidth, 50),
  height: Math.max(element.clientHeight, 40),
});
function columnsOf({ unit, range, nowS }: PlotSpec, line: PlotLine, pixels: number): uPlot.AlignedData {
  const [times, ...amounts] = chartColumns(line.columns(), line.gaps(), range(), pixels, nowS());
  const shown = amounts.map((column) => column.map((si) => (si === null ? null : unit.value(si))));
  return [times, ...shown] as uPlot.AlignedData;
}
/** Several lines share one column of times: where a line has no value of its own it goes on, its gaps stay gaps. */
function dataOf(spec: PlotSpec, pixels: number): uPlot.AlignedData {
  const tables = spec.lines.toReversed().map((line) => columnsOf(spec, line, pixels));
  return tables.length === 1 ? tables[0] : uPlot.join(tables);
}

export function plot(spec: PlotSpec): Attachment<HTMLElement> {
  return (element) => {
    const data = () => dataOf(spec, element.clientWidth - besides.left - besides.right);
    const chart = untrack(() => new uPlot(options(element, spec), data(), element));
    let frame = 0;
    const redraw = () => {
      frame = 0;
      chart.setData(data());
    };
    const soon = () => (frame ||= requestAnimationFrame(redraw));
    const sizes = new ResizeObserver(() => {
      chart.setSize(sizeOf(element));
      soon();
    });
    sizes.observe(element);
    const themes = onTheme(soon);
    $effect(() => {
      if (!spec.held()) void spec.version();
      void spanOf(spec.range());
      void spec.levels();
      soon();
    });
    return () => {
      cancelAnimationFrame(frame);
      sizes.disconnect();
      themes();
      chart.destroy();
    };
  };
}
