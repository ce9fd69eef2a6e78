// SPDX-License-Identifier: MIT
// Columns as a chart draws them: no more points than pixels, with least and most of every pixel kept, every value
// itself once a pixel holds no more than one, and gaps left open. Nothing is smoothed: the line is the mean of what a
// pixel holds, the band its extremes.
import { breakFinder, firstFrom } from './chart-breaks.ts';
import type { Stretch } from './chart-measure.ts';
import { spanOf, type ChartRange } from './chart-window.ts';
import type { Gap } from './trace-book.svelte.ts';

type Column = (number | null)[];
/** Time, mean, least, most. */
export type ChartColumns = [number[], Column, Column, Column];
export interface Bucket {
  sum: number;
  count: number;
  least: number;
  most: number;
}
export const empty = (): Bucket => ({ sum: 0, count: 0, least: Infinity, most: -Infinity });

export function add(bucket: Bucket, value: number): void {
  bucket.sum += value;
  bucket.count += 1;
  bucket.least = Math.min(bucket.least, value);
  bucket.most = Math.max(bucket.most, value);
}
/** Collects values pixel by pixel. */
class PixelRow {
  readonly columns: ChartColumns = [[], [], [], []];
  private bucket = empty();
  private slot = -1;

  add(slot: number, lastS: number, value: number): void {
    if (slot !== this.slot) this.close(lastS);
    this.slot = slot;
    add(this.bucket, value);
  }
  cut(atS: number, lastS: number): void {
    this.close(lastS);
    this.push(atS, null, null, null);
  }
  close(atS: number): void {
    const { sum, count, least, most } = this.bucket;
    if (count === 0) return;
    this.push(atS, sum / count, least, most);
    this.bucket = empty();
  }
  private push(atS: number, mean: number | null, least: number | null, most: number | null): void {
    this.columns[0].push(atS);
    this.columns[1].push(mean);
    this.columns[2].push(least);
    this.columns[3].push(most);
  }
}
const hairS = 1e-6;

/** Mean, least and most of every pixel of `range`, up to `untilS`, and one value beyond either end for the line. */
export function chartColumns(
  { timeS, value, length }: Stretch,
  gaps: readonly Gap[],
  range: ChartRange,
  pixels: number,
  untilS = Infinity,
): ChartColumns {
  const row = new PixelRow();
  const pixelS = spanOf(range) / Math.max(pixels, 10);
  const broken = breakFinder(gaps);
  const first = Math.max(0, firstFrom(timeS, length, range.fromS) - 1);
  const end = Math.min(
    firstFrom(timeS, length, range.toS) + 1,
    firstFrom(timeS, length, untilS + hairS),
    length,
  );
  let lastS = timeS[first];
  for (let index = first; index < end; index += 1) {
    const atS = timeS[index];
    const beyond = Number.isNaN(value[index]);
    if (beyond || broken(lastS, atS)) row.cut(beyond ? atS : atS - hairS, lastS);
    if (!beyond) row.add(Math.floor((atS - range.fromS) / pixelS), lastS, value[index]);
    lastS = atS;
  }
  row.close(lastS);
  return row.columns;
}
/** Over a window, values beyond the tap's range left out. */
export function extremes({ timeS, value, length }: Stretch, range: ChartRange): Bucket {
  const bucket = empty();
  for (
    let index = firstFrom(timeS, length, range.fromS);
    index < length && timeS[index] <= range.toS;
    index += 1
  )
    if (!Number.isNaN(value[index])) add(bucket, value[index]);
  return bucket;
}
