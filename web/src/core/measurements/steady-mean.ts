// SPDX-License-Identifier: MIT
// Mean of a stretch whose neighbours are alike (filters and ripple make samples at 1 kHz depend on each other):
// the spread of block means tells how well the mean is known. Also the robust search for where a value has
// settled. It knows columns of numbers only.
import { mean, median, medianAbsoluteDeviation, sampleStandardDeviation } from 'simple-statistics';

export interface SteadyMean {
  readonly mean: number;
  /** Standard deviation of one value. */
  readonly sd: number;
  /** Standard uncertainty of the mean, from block means. */
  readonly u: number;
  readonly dof: number;
  readonly count: number;
}
const fewestValues = 32;
const blocksAtMost = 16;

/** Null with fewer than 32 values. Blocks hold at least eight values, at most 16 blocks are made. */
export function steadyMean(values: ArrayLike<number>): SteadyMean | null {
  const count = values.length;
  if (count < fewestValues) return null;
  const list = Array.from(values);
  const blocks = Math.min(blocksAtMost, Math.floor(count / 8));
  const means = Array.from({ length: blocks }, (_, b) =>
    mean(list.slice(Math.floor((b * count) / blocks), Math.floor(((b + 1) * count) / blocks))),
  );
  const sd = sampleStandardDeviation(list);
  return {
    mean: mean(list),
    sd,
    u: sampleStandardDeviation(means) / Math.sqrt(blocks),
    dof: blocks - 1,
    count,
  };
}
/** Time from which the value stays near its end: medians of short stretches within `band` of the last third's
 *  median, where `band` is never less than the noise of such a median. Null when it never settles. */
export function settledFrom(timeS: ArrayLike<number>, value: ArrayLike<number>, band: number): number | null {
  const blocks = Math.min(24, Math.floor(value.length / 8));
  if (blocks < 6) return null;
  const cut = (b: number) => Math.floor((b * value.length) / blocks);
  const list = Array.from(value);
  const medians = Array.from({ length: blocks }, (_, b) => median(list.slice(cut(b), cut(b + 1))));
  const tail = list.slice(cut(Math.floor((blocks * 2) / 3)));
  const end = median(tail);
  const noise = (3 * 1.4826 * 1.2533 * medianAbsoluteDeviation(tail)) / Math.sqrt(value.length / blocks);
  const outside = medians.findLastIndex((m) => Math.abs(m - end) > Math.max(band, noise));
  return outside >= blocks - 2 ? null : timeS[cut(outside + 1)];
}
