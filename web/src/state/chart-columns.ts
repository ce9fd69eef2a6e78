// SPDX-License-Identifier: MIT
// Columns as a chart draws them: no more points than pixels, with least and most of every pixel kept, and gaps
// left open. Nothing is smoothed: the line is the mean of what a pixel holds, the band its extremes.
import { figure, liveFigure } from './figures.ts';
import { tapTitle } from '#core/samples/tap-titles';
import type { TapColumns, TraceBook } from './trace-book.svelte.ts';

export interface ChartRange {
  readonly fromS: number;
  readonly toS: number;
}
type Column = (number | null)[];
export type ChartColumns = [number[], Column, Column, Column];

const order = [
  'packCurrentNarrow',
  'railCurrent',
  'railVoltage',
  'packVoltage',
  'speed',
  'thermistorMotor',
  'thermistorServo',
];
/** Taps to draw: those asked for, else up to three of what was recorded, the telling ones first. */
export function chartTaps(traces: TraceBook, wanted?: readonly string[]): TapColumns[] {
  void traces.version;
  const rank = (tap: string) => (order.includes(tap) ? order.indexOf(tap) : order.length);
  const known = traces.taps.filter((each) => each.length > 1);
  const asked = wanted ? known.filter((each) => wanted.includes(each.tap) || each.tap === 'speed') : [];
  const chosen = asked.length > 0 ? asked : known;
  return [...chosen].sort((a, b) => rank(a.tap) - rank(b.tap)).slice(0, 3);
}
export function chartWindow(
  traces: TraceBook,
  spanS: number,
  running: boolean,
  stretch?: ChartRange,
): ChartRange {
  void traces.version;
  const latest = traces.latestS;
  if (!stretch) return { fromS: 0, toS: running ? Math.max(spanS, latest * 1.02, 1) : Math.max(latest, 1) };
  const room = Math.max(0.6 * (stretch.toS - stretch.fromS), 0.05);
  return { fromS: Math.max(0, stretch.fromS - room), toS: Math.min(latest, stretch.toS + room) };
}
/** First index whose time is not before `atS`. */
function firstFrom(timeS: Float64Array, length: number, atS: number): number {
  let low = 0;
  let high = length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (timeS[middle] < atS) low = middle + 1;
    else high = middle;
  }
  return low;
}
interface Bucket {
  sum: number;
  count: number;
  least: number;
  most: number;
}
function push(columns: ChartColumns, time: number, bucket: Bucket | null): void {
  columns[0].push(time);
  columns[1].push(bucket ? bucket.sum / bucket.count : null);
  columns[2].push(bucket ? bucket.least : null);
  columns[3].push(bucket ? bucket.most : null);
}
function add(bucket: Bucket, value: number): void {
  bucket.sum += value;
  bucket.count += 1;
  bucket.least = Math.min(bucket.least, value);
  bucket.most = Math.max(bucket.most, value);
}
/** A tap that was not scanned for longer than this has a gap; the slowest is scanned every 8 ms. */
const unscannedS = 0.05;
const empty = (): Bucket => ({ sum: 0, count: 0, least: Infinity, most: -Infinity });

/** Mean, least and most of every pixel between the ends of `range`. */
export function chartColumns(
  traces: TraceBook,
  tap: string,
  range: ChartRange,
  pixels: number,
): ChartColumns {
  const columns: ChartColumns = [[], [], [], []];
  const found = traces.taps.find((each) => each.tap === tap);
  if (!found) return columns;
  const { timeS, value, length } = found;
  const width = (range.toS - range.fromS) / Math.max(pixels, 10);
  let bucket = empty();
  let slot = -1;
  let last = -Infinity;
  for (
    let index = Math.max(0, firstFrom(timeS, length, range.fromS) - 1);
    index < length && timeS[index] <= range.toS;
    index += 1
  ) {
    const time = timeS[index];
    const mine = Math.floor((time - range.fromS) / width);
    if (mine !== slot && bucket.count > 0) push(columns, last, bucket);
    if (mine !== slot) [slot, bucket] = [mine, empty()];
    const lost = traces.gaps.some((gap) => gap.fromS >= last && gap.toS <= time + 1e-6 && gap.fromS < time);
    const unscanned = time - last > unscannedS && last > -Infinity;
    if (Number.isNaN(value[index]) || lost || unscanned) {
      if (bucket.count > 0) push(columns, last, bucket);
      push(columns, Number.isNaN(value[index]) ? time : time - 1e-6, null);
      bucket = empty();
    }
    if (!Number.isNaN(value[index])) add(bucket, value[index]);
    last = time;
  }
  if (bucket.count > 0) push(columns, last, bucket);
  return columns;
}
function extremes(found: TapColumns, range: ChartRange): Bucket {
  const bucket = empty();
  for (let index = firstFrom(found.timeS, found.length, range.fromS); index < found.length; index += 1) {
    if (found.timeS[index] > range.toS) break;
    if (!Number.isNaN(found.value[index])) add(bucket, found.value[index]);
  }
  return bucket;
}
/** One sentence that stands for a chart. */
export function chartSentence(traces: TraceBook, tap: string): string {
  void traces.version;
  const found = traces.taps.find((each) => each.tap === tap);
  if (!found || found.length === 0) return `${tapTitle(tap)}: nothing recorded yet`;
  const { least, most, count } = extremes(found, { fromS: 0, toS: Infinity });
  if (count === 0) return `${tapTitle(tap)}: nothing inside its range`;
  const lost = traces.gaps.length > 0 ? `, ${traces.gaps.length} gaps` : '';
  return `${tapTitle(tap)} over ${figure(traces.latestS, 0)} s: from ${liveFigure(least, found.unit)} to ${liveFigure(most, found.unit)}${lost}`;
}
export interface TableRow {
  readonly title: string;
  readonly least: string;
  readonly mean: string;
  readonly most: string;
}
export function tapTable(
  traces: TraceBook,
  wanted: readonly string[] | undefined,
  range: ChartRange,
): TableRow[] {
  void traces.version;
  return chartTaps(traces, wanted).map((found) => {
    const { sum, count, least, most } = extremes(found, range);
    const say = (x: number) => (count > 0 ? liveFigure(x, found.unit) : 'nothing');
    return { title: tapTitle(found.tap), least: say(least), mean: say(sum / count), most: say(most) };
  });
}
