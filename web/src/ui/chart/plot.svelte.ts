// SPDX-License-Identifier: MIT
// One uPlot as a Svelte attachment: built once, drawn again on an animation frame when samples came or another part is
// looked at, resized with its box, taken down with it. Only this folder knows uPlot.
import { untrack } from 'svelte';
import type { Attachment } from 'svelte/attachments';
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import { chartColumns } from '../../state/chart-columns.ts';
import type { LevelLines } from '../../state/chart-levels.ts';
import type { ChartUnit } from '../../state/chart-units.ts';
import { spanOf, type ChartRange } from '../../state/chart-window.ts';
import { amountScale, stretchedAtMost } from '../../state/level-scale.ts';
import type { TapColumns, TraceBook } from '../../state/trace-book.svelte.ts';
import { amountAxis, timeAxis } from './axes.ts';
import { overlays } from './overlays.ts';
import { onTheme, token } from './palette.ts';

export interface PlotSpec {
  readonly traces: TraceBook;
  readonly tap: string;
  readonly unit: ChartUnit;
  readonly colour: string;
  readonly range: () => ChartRange;
  /** Nothing newer is drawn. */
  readonly nowS: () => number;
  readonly held: () => boolean;
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

function apart(chart: uPlot): boolean {
  const [times] = chart.data;
  if (times.length < 2) return true;
  const [from, to] = [times[0], times[times.length - 1]].map((atS) => chart.valToPos(atS, 'x'));
  return (to - from) / (times.length - 1) > dotPixels;
}
function options(element: HTMLElement, spec: PlotSpec): uPlot.Options {
  const colour = () => token(spec.colour);
  const times = stretchedAtMost[spec.still ? 'still' : 'whole'];
  const band = { stroke: 'transparent', points: { show: false }, spanGaps: false };
  const line = {
    stroke: colour,
    width: 2.2,
    points: { show: apart, size: 5, fill: colour },
    spanGaps: false,
  };
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
    series: [{}, line, band, band],
    bands: [{ series: [3, 2], fill: () => `color-mix(in srgb, ${colour()} 28%, transparent)` }],
    hooks: overlays(spec),
  };
}
const sizeOf = (element: HTMLElement) => ({
  width: Math.max(element.clientWidth, 50),
  height: Math.max(element.clientHeight, 40),
});
const nothing: TapColumns = {
  tap: '',
  unit: '',
  timeS: new Float64Array(0),
  value: new Float64Array(0),
  length: 0,
  least: 0,
  most: 0,
};
function columnsOf({ traces, tap, unit, range, nowS }: PlotSpec, pixels: number): uPlot.AlignedData {
  const found = traces.taps.find((each) => each.tap === tap) ?? nothing;
  const [times, ...amounts] = chartColumns(found, traces.gaps, range(), pixels, nowS());
  const shown = amounts.map((column) => column.map((si) => (si === null ? null : unit.value(si))));
  return [times, ...shown] as uPlot.AlignedData;
}

export function plot(spec: PlotSpec): Attachment<HTMLElement> {
  return (element) => {
    const columns = () => columnsOf(spec, element.clientWidth - besides.left - besides.right);
    const chart = untrack(() => new uPlot(options(element, spec), columns(), element));
    let frame = 0;
    const redraw = () => {
      frame = 0;
      chart.setData(columns());
    };
    const soon = () => (frame ||= requestAnimationFrame(redraw));
    const sizes = new ResizeObserver(() => {
      chart.setSize(sizeOf(element));
      soon();
    });
    sizes.observe(element);
    const themes = onTheme(soon);
    $effect(() => {
      if (!spec.held()) void spec.traces.version;
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
