// SPDX-License-Identifier: MIT
// Fast moves of a free servo as its current tells them: an inrush when the bridge goes fully on, a plateau while it
// runs, and a break when its loop takes the drive back, downwards or, where it overshot, upwards. Plain values.
import { median } from 'simple-statistics';
import type { SampleStore } from '#core/samples/sample-store';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { Stretch } from './stretch.ts';

export interface MoveSeries {
  readonly timeS: Float64Array;
  readonly amps: Float64Array;
}
export interface Move {
  /** When the current rose, and when the drive was taken back, rig seconds. */
  readonly startS: number;
  readonly endS: number;
  /** When the even current was over for good. */
  readonly overS: number;
}
/** The rise counts from this much above idle: inrush is amperes, electronics take hundredths (from memory). */
const riseA = 0.08;
/** Inrush is over near the plateau; the drive is taken back where the current leaves it for good, well beyond noise. */
const settledShare = 1.15;
const lowShare = 0.75;
const highShare = 1.4;

export function moveSeries(samples: SampleStore, { fromS, toS }: Stretch): MoveSeries {
  const { timeS, value, lost, clipped } = samples.series('railCurrent', fromS, toS);
  if (lost > 0) throw new NotMeasurable(`${lost} scans were lost in a move. Check the cable and run again.`);
  if (clipped > 0)
    throw new NotMeasurable('The rail current tap was at the end of its range in a move. Use a wider tap.');
  return { timeS, amps: value };
}
/** What the current settles to in long moves: the median of what flows beyond the rise. */
export function plateauOf(moves: readonly MoveSeries[], idleA: number): number {
  const flowing = moves.flatMap(({ amps }) => Array.from(amps, (i) => i - idleA).filter((i) => i > riseA));
  if (flowing.length < 32)
    throw new NotMeasurable(
      'The servo drew no current when it was to move. Look at its plug, then run again.',
    );
  return median(flowing);
}
/** Null where no whole move is seen. */
export function moveIn({ timeS, amps }: MoveSeries, idleA: number, plateauA: number): Move | null {
  const above = (share: number) => (i: number) => i - idleA > share * plateauA;
  const start = amps.findIndex((i) => i - idleA > riseA);
  if (start < 1) return null;
  const settled = indexFrom(amps, start + 2, (i) => !above(settledShare)(i));
  const end = indexFrom(amps, settled, (i) => !above(lowShare)(i) || above(highShare)(i));
  if (end >= amps.length) return null;
  const over = lastIndex(amps, above(lowShare)) + 1;
  return { startS: between(timeS, start), endS: between(timeS, end), overS: between(timeS, over) };
}
/** First of two neighbours for which it holds. */
function indexFrom(amps: Float64Array, from: number, holds: (amps: number) => boolean): number {
  let k = from;
  while (k < amps.length && !(holds(amps[k]) && holds(amps[Math.min(k + 1, amps.length - 1)]))) k++;
  return k;
}
function lastIndex(amps: Float64Array, holds: (amps: number) => boolean): number {
  let k = amps.length - 1;
  while (k > 0 && !holds(amps[k])) k--;
  return Math.min(k, amps.length - 2);
}
/** The change lies somewhere between this sample and the one before. */
const between = (timeS: Float64Array, k: number): number => (timeS[k - 1] + timeS[k]) / 2;
