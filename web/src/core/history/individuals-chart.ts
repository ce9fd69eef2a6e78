// SPDX-License-Identifier: MIT
// Individuals and moving-range chart after the NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2: centre
// the mean, spread the mean moving range over d2 of two values, limits three spreads off. Numbers only.

/** d2 for ranges of two values, as the handbook prints it (exact: 2/sqrt(pi) = 1.12838). */
export const d2 = 1.128;
/** D4 for ranges of two values (handbook; from memory). */
const d4 = 3.267;

export interface IndividualsChart {
  readonly count: number;
  readonly centre: number;
  readonly meanRange: number;
  /** Spread of one value from its neighbour, meanRange/d2. */
  readonly sigma: number;
  readonly lower: number;
  readonly upper: number;
  /** A moving range above this means that two neighbours were not of one process. */
  readonly rangeLimit: number;
}
/** Needs two values at least. */
export function individualsChart(values: readonly number[]): IndividualsChart {
  if (values.length < 2) throw new RangeError('a chart needs two values at least');
  const centre = meanOf(values);
  const meanRange = meanOf(movingRanges(values));
  const sigma = meanRange / d2;
  return {
    count: values.length,
    centre,
    meanRange,
    sigma,
    lower: centre - 3 * sigma,
    upper: centre + 3 * sigma,
    rangeLimit: d4 * meanRange,
  };
}
export const movingRanges = (values: readonly number[]): number[] =>
  values.slice(1).map((value, i) => Math.abs(value - values[i]));
export const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
