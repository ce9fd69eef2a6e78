// SPDX-License-Identifier: MIT
// Does a series of results rise or fall? The Mann-Kendall test with its exact distribution (Mann 1945, Kendall
// 1975; from memory), so the chance of a false alarm is what it says for few runs too. Order only, no spread.

export interface Trend {
  /** Rising pairs less falling pairs. */
  readonly s: number;
  /** Chance of so large an |s| in a series without trend. */
  readonly p: number;
}
const mostValues = 60;
/** Looks at the last sixty values at most: older ones are history, and the distribution stays exact. */
export function trendOf(values: readonly number[]): Trend {
  const recent = values.slice(-mostValues);
  const s = kendallS(recent);
  return { s, p: chanceOfS(recent.length, Math.abs(s)) };
}
export function kendallS(values: readonly number[]): number {
  let s = 0;
  values.forEach((later, j) => {
    for (let i = 0; i < j; i++) s += Math.sign(later - values[i]);
  });
  return s;
}
/** P(|S| >= s) of n values in random order; equal values make it larger than the truth, never smaller. */
function chanceOfS(n: number, s: number): number {
  if (n < 2 || s <= 0) return 1;
  const pairs = (n * (n - 1)) / 2;
  const shares = inversionShares(n);
  const fewest = Math.floor((pairs - s) / 2);
  let tail = 0;
  for (let k = 0; k <= fewest; k++) tail += shares[k] ?? 0;
  return Math.min(1, 2 * tail);
}
/** Share of the n! orders that have k inversions, k from 0 up; built one value at a time. */
function inversionShares(n: number): Float64Array {
  let shares = Float64Array.of(1);
  for (let m = 2; m <= n; m++) {
    const next = new Float64Array(shares.length + m - 1);
    shares.forEach((share, k) => {
      for (let extra = 0; extra < m; extra++) next[k + extra] += share / m;
    });
    shares = next;
  }
  return shares;
}
