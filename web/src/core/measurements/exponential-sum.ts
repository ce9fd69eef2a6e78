// SPDX-License-Identifier: MIT
// Least squares of a sum of exponentials whose time constants are given: y = start + sum r_k (1 - e^(-t/tau_k)),
// with what it says of y at another time. It is linear, so it has one answer. It knows numbers only.
import type { CurvePoint } from './curve-fit.ts';
import { leastSquares, type LinearFit } from './normal-equations.ts';

/** 1 - e^(-t/tau), to full precision for short times. */
export const grown = (timeS: number, tauS: number): number => -Math.expm1(-timeS / tauS);
const termsOf = (tausS: readonly number[], timeS: number): number[] => [
  1,
  ...tausS.map((tauS) => grown(timeS, tauS)),
];
/** Amounts: start, then one rise a time constant. Null when the points can't tell the rises apart. */
export function exponentialSum(points: readonly CurvePoint[], tausS: readonly number[]): LinearFit | null {
  const rows = points.map(({ x, u }) => termsOf(tausS, x).map((term) => term / u));
  return leastSquares(
    [0, ...tausS].map((_, k) => rows.map((row) => row[k])),
    points.map(({ y, u }) => y / u),
  );
}
/** The fitted value at a time, and its standard deviation from the points' own u. */
export function valueAt(fit: LinearFit, tausS: readonly number[], timeS: number): readonly [number, number] {
  const terms = termsOf(tausS, timeS);
  const value = terms.reduce((sum, term, k) => sum + term * fit.amounts[k], 0);
  const variance = terms.reduce(
    (sum, a, i) => sum + terms.reduce((row, b, j) => row + a * b * fit.covariance[i][j], 0),
    0,
  );
  return [value, Math.sqrt(Math.max(0, variance))];
}
