// SPDX-License-Identifier: MIT
// What is drawn over a plot's grid: the plot's ground, gaps as hatched cuts, marks as thin verticals, the stretch
// a number came from, results, the "now" line. Nothing that came after a picture was held is drawn.
import type uPlot from 'uplot';
import { paintLevels } from './level-painter.ts';
import { token } from './palette.ts';
import type { PlotSpec } from './plot.svelte.ts';
import { hatched, labelFont, line, px, rimmed, type Stroke } from './strokes.ts';

type Painter = (chart: uPlot) => void;

function ground(spec: PlotSpec): Painter {
  return (chart) => {
    const { ctx, bbox } = chart;
    ctx.save();
    const newest = Math.min(chart.valToPos(spec.nowS(), 'x', true), bbox.left + bbox.width);
    const known = spec.running ? Math.max(0, newest - bbox.left) : bbox.width;
    ctx.fillStyle = token('--card');
    ctx.fillRect(bbox.left, bbox.top, known, bbox.height);
    ctx.strokeStyle = token('--hair');
    ctx.strokeRect(bbox.left, bbox.top, bbox.width, bbox.height);
    ctx.restore();
  };
}
function gaps(spec: PlotSpec): Painter {
  return (chart) => {
    const right = chart.bbox.left + chart.bbox.width;
    for (const gap of spec.gaps().filter(({ fromS }) => fromS < spec.nowS())) {
      const from = Math.max(chart.valToPos(gap.fromS, 'x', true), chart.bbox.left);
      const to = Math.min(Math.max(chart.valToPos(gap.toS, 'x', true), from + 8 * devicePixelRatio), right);
      if (from >= right || to <= chart.bbox.left) continue;
      const lostMs = Math.round((gap.toS - gap.fromS) * 1000);
      chart.ctx.fillStyle = token('--ground');
      chart.ctx.fillRect(from, chart.bbox.top, to - from, chart.bbox.height);
      hatched(chart.ctx, { ...chart.bbox, left: from, width: to - from }, token('--nm'));
      if (spec.last) beside(chart, `${lostMs} ms lost`, from, to);
    }
  };
}
function label(chart: uPlot, text: string, x: number, y: number, colour: string): void {
  const { ctx } = chart;
  ctx.save();
  ctx.fillStyle = colour;
  ctx.font = labelFont();
  ctx.textAlign = 'center';
  ctx.fillText(text, x, y);
  ctx.restore();
}
/** What is said of a gap stands left of it where there is room, on a rim of the ground it covers. */
function beside(chart: uPlot, text: string, from: number, to: number): void {
  const { ctx, bbox } = chart;
  ctx.save();
  ctx.font = labelFont();
  const left = from - px(6) - ctx.measureText(text).width > bbox.left;
  ctx.restore();
  const at = [left ? from - px(6) : to + px(6), bbox.top + bbox.height - px(8)] as const;
  rimmed(ctx, text, at, { colour: token('--nm'), align: left ? 'right' : 'left' });
}
function vertical({ ctx, bbox }: uPlot, x: number, how: Stroke): void {
  if (x < bbox.left || x > bbox.left + bbox.width) return;
  line(ctx, [x, bbox.top], [x, bbox.top + bbox.height], how);
}
const rank = ({ label: text }: { readonly label: string }): number => (/\btrip$/.test(text) ? 0 : 1);

/** A trip is named first; other labels that would overlap one are left out, their lines stay. */
function marks(spec: PlotSpec): Painter {
  return (chart) => {
    const { left, top, width } = chart.bbox;
    const known = spec.marks().filter(({ atS }) => atS <= spec.nowS());
    const placed: [number, number][] = [];
    for (const { atS, label: text, dash } of known.toSorted((a, b) => rank(a) - rank(b))) {
      const x = chart.valToPos(atS, 'x', true);
      vertical(chart, x, { colour: token('--ink'), width: 1, dash });
      const half = (text.length * 6.6 * devicePixelRatio) / 2;
      const middle = Math.min(Math.max(x, left + half), left + width - half);
      const taken = placed.some(([from, to]) => middle - half < to && middle + half > from);
      if (!spec.first || x < left || x > left + width || taken) continue;
      label(chart, text, middle, top - 6 * devicePixelRatio, token('--ink'));
      placed.push([middle - half - 6 * devicePixelRatio, middle + half + 6 * devicePixelRatio]);
    }
  };
}
function stretch(spec: PlotSpec): Painter {
  return (chart) => {
    if (!spec.stretch) return;
    const { ctx, bbox } = chart;
    const from = Math.max(chart.valToPos(spec.stretch.fromS, 'x', true), bbox.left);
    const to = Math.min(chart.valToPos(spec.stretch.toS, 'x', true), bbox.left + bbox.width);
    if (to <= from) return;
    ctx.save();
    ctx.globalAlpha = 0.13;
    ctx.fillStyle = token(spec.still ? '--focus' : '--soft');
    ctx.fillRect(from, bbox.top, to - from, bbox.height);
    ctx.restore();
    for (const x of [from, to])
      vertical(chart, x, { colour: token(spec.still ? '--focus' : '--soft'), width: spec.still ? 2 : 1 });
  };
}
const levels =
  (spec: PlotSpec): Painter =>
  (chart) =>
    paintLevels(chart, spec.levels());

function now(spec: PlotSpec): Painter {
  return (chart) => {
    if (!spec.running) return;
    const x = chart.valToPos(spec.nowS(), 'x', true);
    if (spec.held()) vertical(chart, x, { colour: token('--ink'), width: 2 });
    else vertical(chart, x, { colour: token('--lantern'), width: 3 });
  };
}
export function overlays(spec: PlotSpec): uPlot.Hooks.Arrays {
  return {
    drawClear: [ground(spec)],
    draw: [stretch(spec), gaps(spec), levels(spec), marks(spec), now(spec)],
  };
}
