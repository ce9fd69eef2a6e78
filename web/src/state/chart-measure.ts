// SPDX-License-Identifier: MIT
// What a brushed stretch of one tap amounts to: mean, peak to peak, rms about the mean, slope. In the tap's unit, over
// every value of the stretch. A stretch with a gap or with a value beyond the tap's range gives no number.
import { breakFinder, firstFrom } from './chart-breaks.ts';
import type { ChartRange } from './chart-window.ts';
import type { Gap, TapColumns } from './trace-book.svelte.ts';

export interface Measured {
  readonly mean: number;
  readonly peakToPeak: number;
  /** Root of the mean square of the deviations from the mean: what is left without d.c. */
  readonly rms: number;
  /** Of the least-squares line, a second. */
  readonly slopePerS: number;
}
export type NoMeasure = 'gap' | 'not scanned' | 'beyond range' | 'too few';
export type Stretch = Pick<TapColumns, 'timeS' | 'value' | 'length'>;

/**
 * Over the values from `fromS` to `toS`, in two passes, as the figures would suffer in one (Chan, Golub and LeVeque
 * 1983 on the ways to compute a variance; from memory). Every value counts alike, also where values come unevenly. Needs
 * three values at different times.
 */
export function measured(
  tap: Stretch,
  gaps: readonly Gap[],
  { fromS, toS }: ChartRange,
): Measured | NoMeasure {
  const first = firstFrom(tap.timeS, tap.length, fromS);
  let end = firstFrom(tap.timeS, tap.length, toS);
  while (end < tap.length && tap.timeS[end] === toS) end += 1;
  const trouble = unmeasurable(tap, gaps, { fromS, toS }, first, end);
  if (trouble) return trouble;
  const time = tap.timeS.subarray(first, end);
  const value = tap.value.subarray(first, end);
  const mean = meanOf(value);
  return { mean, peakToPeak: peakToPeak(value), ...moments(time, value, mean) };
}
function unmeasurable(
  tap: Stretch,
  gaps: readonly Gap[],
  { fromS, toS }: ChartRange,
  first: number,
  end: number,
): NoMeasure | null {
  if (gaps.some((gap) => gap.toS > fromS && gap.fromS < toS)) return 'gap';
  const broken = breakFinder([]);
  let lastS = fromS;
  for (let index = first; index < end; index += 1) {
    if (Number.isNaN(tap.value[index])) return 'beyond range';
    if (broken(lastS, tap.timeS[index])) return 'not scanned';
    lastS = tap.timeS[index];
  }
  if (broken(lastS, toS)) return 'not scanned';
  return end - first < 3 ? 'too few' : null;
}
/** About the first value, so that a large offset costs no digits. */
function meanOf(value: Float64Array): number {
  let sum = 0;
  for (let index = 1; index < value.length; index += 1) sum += value[index] - value[0];
  return value[0] + sum / value.length;
}
function peakToPeak(value: Float64Array): number {
  let [least, most] = [value[0], value[0]];
  for (let index = 1; index < value.length; index += 1) {
    if (value[index] < least) least = value[index];
    if (value[index] > most) most = value[index];
  }
  return most - least;
}
function moments(time: Float64Array, value: Float64Array, mean: number): Pick<Measured, 'rms' | 'slopePerS'> {
  const meanTime = meanOf(time);
  let [squares, products, timeSquares] = [0, 0, 0];
  for (let index = 0; index < value.length; index += 1) {
    const t = time[index] - meanTime;
    const v = value[index] - mean;
    squares += v * v;
    products += t * v;
    timeSquares += t * t;
  }
  return { rms: Math.sqrt(squares / value.length), slopePerS: products / timeSquares };
}
