// SPDX-License-Identifier: MIT
// When did a series step? The test of Pettitt (1979; from memory): the split at which the ranks before and after
// differ most, with its approximate chance of a false alarm. Order only, no spread.

export interface ChangePoint {
  /** Values up to and with this many belong to the time before. */
  readonly after: number;
  readonly k: number;
  /** Approximate, too large rather than too small for short series. */
  readonly p: number;
}
/** Null with fewer than two values. */
export function changePointOf(values: readonly number[]): ChangePoint | null {
  const n = values.length;
  if (n < 2) return null;
  const splits = values.slice(0, -1).map((_, i) => Math.abs(rankSum(values, i + 1)));
  const k = Math.max(...splits);
  return { after: splits.indexOf(k) + 1, k, p: Math.min(1, 2 * Math.exp((-6 * k ** 2) / (n ** 3 + n ** 2))) };
}
function rankSum(values: readonly number[], split: number): number {
  let sum = 0;
  for (let i = 0; i < split; i++)
    for (let j = split; j < values.length; j++) sum += Math.sign(values[i] - values[j]);
  return sum;
}
