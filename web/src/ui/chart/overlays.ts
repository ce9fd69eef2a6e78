// SPDX-License-Identifier: MIT
// What is drawn over a plot's grid: the plot's ground, gaps as hatched cuts, marks as thin verticals, the stretch
// a number came from, the "now" line. Colours come from the tokens at every draw, so that a theme change shows.
import type uPlot from 'uplot';
import type { PlotSpec } from './plot.svelte.ts';

type Painter = (chart: uPlot) => void;
const token = (element: HTMLElement, name: string) => getComputedStyle(element).getPropertyValue(name).trim();

function ground(element: HTMLElement, spec: PlotSpec): Painter {
  return (chart) => {
    const { ctx, bbox } = chart;
    ctx.save();
    const now = Math.min(chart.valToPos(spec.traces.latestS, 'x', true), bbox.left + bbox.width);
    const known = spec.running ? Math.max(0, now - bbox.left) : bbox.width;
    ctx.fillStyle = token(element, '--card');
    ctx.fillRect(bbox.left, bbox.top, known, bbox.height);
    ctx.strokeStyle = token(element, '--hair');
    ctx.strokeRect(bbox.left, bbox.top, bbox.width, bbox.height);
    ctx.restore();
  };
}
function hatch(chart: uPlot, from: number, to: number, colour: string): void {
  const { ctx, bbox } = chart;
  ctx.save();
  ctx.beginPath();
  ctx.rect(from, bbox.top, to - from, bbox.height);
  ctx.clip();
  ctx.strokeStyle = colour;
  ctx.lineWidth = 2 * devicePixelRatio;
  const step = 9 * devicePixelRatio;
  for (let x = from - bbox.height; x < to; x += step) {
    ctx.beginPath();
    ctx.moveTo(x, bbox.top + bbox.height);
    ctx.lineTo(x + bbox.height, bbox.top);
    ctx.stroke();
  }
  ctx.restore();
}
function gaps(element: HTMLElement, spec: PlotSpec): Painter {
  return (chart) => {
    const right = chart.bbox.left + chart.bbox.width;
    for (const gap of spec.traces.gaps) {
      const from = Math.max(chart.valToPos(gap.fromS, 'x', true), chart.bbox.left);
      const to = Math.min(Math.max(chart.valToPos(gap.toS, 'x', true), from + 8 * devicePixelRatio), right);
      if (from >= right || to <= chart.bbox.left) continue;
      const lostMs = Math.round((gap.toS - gap.fromS) * 1000);
      chart.ctx.fillStyle = token(element, '--ground');
      chart.ctx.fillRect(from, chart.bbox.top, to - from, chart.bbox.height);
      hatch(chart, from, to, token(element, '--nm'));
      if (spec.last)
        label(
          chart,
          `${lostMs} ms lost`,
          from,
          chart.bbox.top + chart.bbox.height - 8 * devicePixelRatio,
          token(element, '--nm'),
        );
    }
  };
}
function label(chart: uPlot, text: string, x: number, y: number, colour: string): void {
  const { ctx } = chart;
  ctx.save();
  ctx.fillStyle = colour;
  ctx.font = `600 ${13 * devicePixelRatio}px "Atkinson Hyperlegible Next", system-ui`;
  ctx.textAlign = 'center';
  ctx.fillText(text, x, y);
  ctx.restore();
}
function vertical(chart: uPlot, x: number, colour: string, width: number): void {
  const { ctx, bbox } = chart;
  if (x < bbox.left || x > bbox.left + bbox.width) return;
  ctx.save();
  ctx.strokeStyle = colour;
  ctx.lineWidth = width * devicePixelRatio;
  ctx.beginPath();
  ctx.moveTo(x, bbox.top);
  ctx.lineTo(x, bbox.top + bbox.height);
  ctx.stroke();
  ctx.restore();
}
/** Labels that would overlap the last one are left out; their line stays. */
function marks(element: HTMLElement, spec: PlotSpec): Painter {
  return (chart) => {
    let free = chart.bbox.left;
    for (const mark of spec.traces.marks) {
      const x = chart.valToPos(mark.atS, 'x', true);
      vertical(chart, x, token(element, '--ink'), 1);
      const half = (mark.label.length * 6.6 * devicePixelRatio) / 2;
      if (!spec.first || x - half < free || x + half > chart.bbox.left + chart.bbox.width) continue;
      label(chart, mark.label, x, chart.bbox.top - 6 * devicePixelRatio, token(element, '--ink'));
      free = x + half + 6 * devicePixelRatio;
    }
  };
}
function stretch(element: HTMLElement, spec: PlotSpec): Painter {
  return (chart) => {
    if (!spec.stretch) return;
    const { ctx, bbox } = chart;
    const from = Math.max(chart.valToPos(spec.stretch.fromS, 'x', true), bbox.left);
    const to = Math.min(chart.valToPos(spec.stretch.toS, 'x', true), bbox.left + bbox.width);
    ctx.save();
    ctx.globalAlpha = 0.13;
    ctx.fillStyle = token(element, '--focus');
    ctx.fillRect(from, bbox.top, to - from, bbox.height);
    ctx.restore();
    vertical(chart, from, token(element, '--focus'), 2);
    vertical(chart, to, token(element, '--focus'), 2);
  };
}
function now(element: HTMLElement, spec: PlotSpec): Painter {
  return (chart) => {
    if (spec.running)
      vertical(chart, chart.valToPos(spec.traces.latestS, 'x', true), token(element, '--lantern'), 3);
  };
}
export function overlays(element: HTMLElement, spec: PlotSpec): uPlot.Hooks.Arrays {
  return {
    drawClear: [ground(element, spec)],
    draw: [stretch(element, spec), gaps(element, spec), marks(element, spec), now(element, spec)],
  };
}
