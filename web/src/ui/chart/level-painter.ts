// SPDX-License-Identifier: MIT
// Draws results on the trace they belong to: each limit dashed, hatched on its bad side where it applied; the value as
// a line over the stretches it came from with its interval, led to a bead at the right end; words at the ends.
import type uPlot from 'uplot';
import type { LevelLines, LimitLine } from '../../state/chart-levels.ts';
import { placedBaselines } from '../../state/level-scale.ts';
import type { ChartRange } from '../../state/chart-window.ts';
import { token } from './palette.ts';
import { hatched, labelFont, line, px, rimmed } from './strokes.ts';

const hatchDepth = 9;
/** Room for the plot's name at the top left. */
const name = { height: 22, width: 180 };
/** A narrower plot has the words of more than one result below it only. */
const leastForWords = 320;

export function paintLevels(chart: uPlot, levels: readonly LevelLines[]): void {
  if (levels.length === 0) return;
  const { ctx, bbox } = chart;
  ctx.save();
  ctx.beginPath();
  ctx.rect(bbox.left, bbox.top, bbox.width + px(8), bbox.height);
  ctx.clip();
  for (const level of levels) {
    for (const limit of level.limits) paintLimit(chart, limit, level.stretches);
    paintValue(chart, level);
  }
  ctx.restore();
  paintWords(chart, levels);
}
const yOf = (chart: uPlot, at: number): number => chart.valToPos(at, 'y', true);
const isOff = ({ bbox }: uPlot, y: number): boolean => y < bbox.top || y > bbox.top + bbox.height;
const kept = ({ bbox }: uPlot, y: number): number =>
  Math.min(Math.max(y, bbox.top + px(2)), bbox.top + bbox.height - px(2));

/** Left and right of a stretch inside the plot, wide enough to be seen; null where it is out of sight. */
function seen(chart: uPlot, { fromS, toS }: ChartRange): [number, number] | null {
  const { left, width } = chart.bbox;
  const [from, to] = [fromS, toS].map((atS) => chart.valToPos(atS, 'x', true));
  if (to < left || from > left + width) return null;
  const lack = Math.max(px(8) - (to - from), 0) / 2;
  return [Math.max(from - lack, left), Math.min(to + lack, left + width)];
}
function paintLimit(chart: uPlot, { at, bad }: LimitLine, stretches: readonly ChartRange[]): void {
  const { ctx, bbox } = chart;
  const y = yOf(chart, at);
  if (isOff(chart, y)) return paintPointer(chart, y, token('--ink'));
  for (const stretch of stretches) {
    const [from, to] = seen(chart, stretch) ?? [0, 0];
    const box = { left: from, width: to - from, height: px(hatchDepth) };
    if (bad !== 'below') hatched(ctx, { ...box, top: y - px(hatchDepth) }, token('--fail'));
    if (bad !== 'above') hatched(ctx, { ...box, top: y }, token('--fail'));
  }
  const how = { colour: token('--ink'), width: 2, dash: [8, 5] };
  line(ctx, [bbox.left, y], [bbox.left + bbox.width, y], how);
}
/** What lies off the axis: a triangle at the right end that points there. */
function paintPointer({ ctx, bbox }: uPlot, y: number, colour: string): void {
  const [up, right] = [y < bbox.top, bbox.left + bbox.width - px(3)];
  const [tip, foot] = up ? [bbox.top + px(3), px(9)] : [bbox.top + bbox.height - px(3), px(-9)];
  ctx.fillStyle = colour;
  ctx.beginPath();
  ctx.moveTo(right - px(6), tip);
  ctx.lineTo(right, tip + foot);
  ctx.lineTo(right - px(12), tip + foot);
  ctx.fill();
}
function paintValue(chart: uPlot, { value, stretches, colour: name }: LevelLines): void {
  if (!value) return;
  const { ctx, bbox } = chart;
  const [y, colour] = [yOf(chart, value.at), token(name)];
  if (isOff(chart, y)) return paintPointer(chart, y, colour);
  const [low, high] = value.interval.map((at) => yOf(chart, at));
  const right = bbox.left + bbox.width;
  const places = stretches.flatMap((stretch) => [seen(chart, stretch) ?? []]).filter(({ length }) => length);
  for (const [from, to] of places) {
    ctx.save();
    ctx.globalAlpha = 0.22;
    ctx.fillStyle = colour;
    ctx.fillRect(from, high, to - from, low - high);
    ctx.restore();
    line(ctx, [from, y], [to, y], { colour, width: 3 });
  }
  if (places.length > 0) line(ctx, [places[0][0], y], [right, y], { colour, width: 1.2, dash: [1.5, 4] });
  paintBead(chart, { y, low, high }, colour);
}
function paintBead(
  { ctx, bbox }: uPlot,
  { y, low, high }: { y: number; low: number; high: number },
  colour: string,
): void {
  const x = bbox.left + bbox.width;
  line(ctx, [x, low], [x, high], { colour, width: 2.4 });
  for (const end of [low, high]) line(ctx, [x - px(5), end], [x + px(5), end], { colour, width: 2.4 });
  ctx.fillStyle = colour;
  ctx.beginPath();
  ctx.arc(x, y, px(4.5), 0, 2 * Math.PI);
  ctx.fill();
}
/** Of the result that is looked at first, so that its words find their place. */
function paintWords(chart: uPlot, levels: readonly LevelLines[]): void {
  const { bbox } = chart;
  const named = levels.length > 1;
  if (named && bbox.width < px(leastForWords)) return;
  const wanted = levels.flatMap(({ title, colour, value, limits }, index) => {
    const shared = { prefix: named ? `${title}: ` : '', needed: index === 0 };
    return [
      ...(value ? [{ at: value.at, words: value.words, colour, ...shared }] : []),
      ...limits.map(({ at, words }) => ({ at, words, colour: '--ink', ...shared })),
    ];
  });
  const texts = wanted.map(({ prefix, words }) => `${fitting(chart, prefix, words)}${words}`);
  const lines = wanted.map(({ at, needed }, k) => ({
    needed,
    y: (kept(chart, yOf(chart, at)) - bbox.top) / devicePixelRatio,
    top: widthOf(chart, texts[k]) + px(name.width) > bbox.width ? name.height : 2,
  }));
  placedBaselines(lines, bbox.height / devicePixelRatio).forEach((y, k) => {
    if (y !== null) endWords(chart, texts[k], bbox.top + px(y), wanted[k].colour);
  });
}
function endWords({ ctx, bbox }: uPlot, text: string, y: number, colour: string): void {
  rimmed(ctx, text, [bbox.left + bbox.width - px(16), y], { colour: token(colour), align: 'right' });
}
/** As much of the result's name as there is room for before its words. */
function fitting(chart: uPlot, prefix: string, words: string): string {
  const room = chart.bbox.width - px(30) - widthOf(chart, words);
  const share = room / Math.max(widthOf(chart, prefix), 1);
  if (prefix === '' || share >= 1) return prefix;
  return `${prefix.slice(0, Math.max(0, Math.floor(prefix.length * share) - 2))}… `;
}
function widthOf({ ctx }: uPlot, text: string): number {
  ctx.save();
  ctx.font = labelFont();
  const { width } = ctx.measureText(text);
  ctx.restore();
  return width;
}
