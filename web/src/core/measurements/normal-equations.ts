// SPDX-License-Identifier: MIT
// Linear least squares and its covariance, (J^T J)^-1, by Cholesky on columns of unit length. It knows numbers only.

export type Matrix = readonly (readonly number[])[];
export interface LinearFit {
  readonly amounts: readonly number[];
  /** From points of unit scatter. */
  readonly covariance: Matrix;
  readonly chi2: number;
}
/** Pivot below which two columns tell the same. */
const leastPivot = 1e-13;

/** `columns`: one a parameter, each the whitened slope at every point. Null when they aren't independent. */
export function covarianceOf(columns: Matrix): Matrix | null {
  const lengths = columns.map((column) => Math.hypot(...column));
  if (lengths.some((length) => !(length > 0) || !Number.isFinite(length))) return null;
  const units = columns.map((column, k) => column.map((value) => value / lengths[k]));
  const lower = cholesky(units.map((a) => units.map((b) => dot(a, b))));
  if (!lower) return null;
  const inverse = columns.map((_, k) =>
    solved(
      lower,
      columns.map((_column, j) => (j === k ? 1 : 0)),
    ),
  );
  return inverse.map((row, i) => row.map((value, j) => value / (lengths[i] * lengths[j])));
}
/** `right` as the sum of amounts times columns, both whitened. Null when the columns aren't independent. */
export function leastSquares(columns: Matrix, right: readonly number[]): LinearFit | null {
  const covariance = covarianceOf(columns);
  if (!covariance) return null;
  const along = columns.map((column) => dot(column, right));
  const amounts = covariance.map((row) => dot(row, along));
  const chi2 = right.reduce(
    (sum, value, i) => sum + (value - columns.reduce((y, column, k) => y + amounts[k] * column[i], 0)) ** 2,
    0,
  );
  return { amounts, covariance, chi2 };
}
const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * b[i], 0);

function cholesky(matrix: Matrix): number[][] | null {
  const lower = matrix.map((row) => row.map(() => 0));
  for (let i = 0; i < matrix.length; i++)
    for (let j = 0; j <= i; j++) {
      const rest = matrix[i][j] - dot(lower[i].slice(0, j), lower[j]);
      if (i === j && !(rest > leastPivot)) return null;
      lower[i][j] = i === j ? Math.sqrt(rest) : rest / lower[j][j];
    }
  return lower;
}
/** Forward, then backward substitution. */
function solved(lower: readonly (readonly number[])[], right: readonly number[]): number[] {
  const x = right.slice();
  for (let i = 0; i < x.length; i++) x[i] = (x[i] - dot(x.slice(0, i), lower[i])) / lower[i][i];
  for (let i = x.length - 1; i >= 0; i--) {
    for (let j = i + 1; j < x.length; j++) x[i] -= lower[j][i] * x[j];
    x[i] /= lower[i][i];
  }
  return x;
}
