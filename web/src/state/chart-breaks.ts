// SPDX-License-Identifier: MIT
// Where a tap's line must not be drawn through: rows known to be lost, a tap not scanned for a while. Pure.
import type { Gap } from './trace-book.svelte.ts';

/** A tap that was not scanned for longer than this has a gap; the slowest is scanned every 8 ms. */
export const unscannedS = 0.05;
/** Rows lie on a grid of 0.5 us: a gap that ends at a row may be told to end a hair after it. */
const hairS = 1e-6;

/** Tells for neighbouring values, asked in the order of time, whether the line between them is broken. */
export function breakFinder(gaps: readonly Gap[]): (lastS: number, atS: number) => boolean {
  let next = 0;
  return (lastS, atS) => {
    while (next < gaps.length && gaps[next].fromS < lastS) next += 1;
    const lost = next < gaps.length && gaps[next].fromS < atS && gaps[next].toS <= atS + hairS;
    return lost || atS - lastS > unscannedS;
  };
}
/** First index whose time is not before `atS`. */
export function firstFrom(timeS: Float64Array, length: number, atS: number): number {
  let low = 0;
  let high = length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (timeS[middle] < atS) low = middle + 1;
    else high = middle;
  }
  return low;
}
