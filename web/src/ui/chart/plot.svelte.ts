// SPDX-License-Identifier: MIT
// One uPlot as a Svelte attachment: built once, fed when the trace book's version moves, resized with its box,
// redrawn in the colours of another theme, taken down with it. Only this folder knows uPlot.
import { untrack } from 'svelte';
import type { Attachment } from 'svelte/attachments';
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import { chartColumns, type ChartRange } from '../../state/chart-columns.ts';
import type { TraceBook } from '../../state/trace-book.svelte.ts';
import { overlays } from './overlays.ts';

export interface PlotSpec {
  readonly traces: TraceBook;
  readonly tap: string;
  readonly colour: string;
  readonly range: () => ChartRange;
  readonly stretch?: { readonly fromS: number; readonly toS: number };
  readonly running: boolean;
  readonly first: boolean;
  readonly last: boolean;
}
const font = '14px "Atkinson Hyperlegible Next", system-ui';

function token(element: HTMLElement, name: string): string {
  return getComputedStyle(element).getPropertyValue(name).trim();
}
function axis(element: HTMLElement, shown: boolean): uPlot.Axis {
  return {
    stroke: () => token(element, '--soft'),
    font,
    show: shown,
    grid: { show: false },
    ticks: { show: false },
    size: 28,
    gap: 4,
    values: (_chart, splits) =>
      splits.map((at, index) => (index === splits.length - 1 ? `${at} s` : String(at))),
  };
}
/** Head room for the plot's name, which stands inside at its top. */
function roomy(least: number | null, most: number | null): [number, number] {
  if (least === null || most === null) return [0, 1];
  const span = Math.max(most - least, Math.abs(most) * 0.01, 0.01);
  return [least - 0.1 * span, most + 0.4 * span];
}
function options(element: HTMLElement, spec: PlotSpec): uPlot.Options {
  const colour = () => token(element, spec.colour);
  const band = { stroke: 'transparent', points: { show: false }, spanGaps: false };
  return {
    width: Math.max(element.clientWidth, 50),
    height: Math.max(element.clientHeight, 40),
    padding: [spec.first ? 20 : 6, 24, 2, 0],
    legend: { show: false },
    cursor: { show: false },
    scales: {
      x: { time: false, range: () => [spec.range().fromS, spec.range().toS] },
      y: { range: (_chart, least, most) => roomy(least, most) },
    },
    axes: [
      axis(element, spec.last),
      {
        stroke: () => token(element, '--soft'),
        font,
        size: 52,
        gap: 4,
        grid: { stroke: () => token(element, '--hair'), width: 1 },
        ticks: { show: false },
        space: 30,
      },
    ],
    series: [{}, { stroke: colour, width: 2.2, points: { show: false }, spanGaps: false }, band, band],
    bands: [{ series: [3, 2], fill: () => `color-mix(in srgb, ${colour()} 28%, transparent)` }],
    hooks: overlays(element, spec),
  };
}

export function plot(spec: PlotSpec): Attachment<HTMLElement> {
  return (element) => {
    const columns = () => chartColumns(spec.traces, spec.tap, spec.range(), element.clientWidth - 64);
    const chart = untrack(() => new uPlot(options(element, spec), columns(), element));
    let frame = 0;
    const redraw = () => {
      frame = 0;
      chart.setData(columns());
    };
    const soon = () => (frame ||= requestAnimationFrame(redraw));
    const sizes = new ResizeObserver(() => {
      chart.setSize({ width: Math.max(element.clientWidth, 50), height: Math.max(element.clientHeight, 40) });
      soon();
    });
    sizes.observe(element);
    const themes = new MutationObserver(soon);
    themes.observe(document.documentElement, { attributeFilter: ['data-theme'] });
    $effect(() => {
      void spec.traces.version;
      soon();
    });
    return () => {
      cancelAnimationFrame(frame);
      sizes.disconnect();
      themes.disconnect();
      chart.destroy();
    };
  };
}
