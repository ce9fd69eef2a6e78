// SPDX-License-Identifier: MIT
// Straight line through points with errors on both axes: York, Evensen, Martinez, De Basabe Delgado,
// Am. J. Phys. 72 (2004) 367, eqs. 13 (errors of x and y of one point uncorrelated). With u(x) = 0 it is the
// weighted least-squares line. It knows numbers only.

export interface LinePoint {
  readonly x: number;
  readonly y: number;
  readonly ux: number;
  readonly uy: number;
}
export interface LineFit {
  readonly slope: number;
  readonly intercept: number;
  /** Standard uncertainties from the points' own; multiply by sqrt(reducedChi2) to take them from the scatter. */
  readonly uSlope: number;
  readonly uIntercept: number;
  readonly covariance: number;
  readonly chi2: number;
  readonly dof: number;
}
interface Sums {
  readonly slope: number;
  readonly xBar: number;
  readonly yBar: number;
  readonly weights: readonly number[];
  readonly betas: readonly number[];
}
/** Null when there are fewer than three points or all x are the same. */
export function yorkFit(points: readonly LinePoint[]): LineFit | null {
  if (points.length < 3) return null;
  let slope = plainSlope(points);
  if (!Number.isFinite(slope)) return null;
  let sums = next(points, slope);
  for (let turn = 0; turn < 60 && Math.abs(sums.slope - slope) > 1e-14 * Math.abs(slope); turn++) {
    slope = sums.slope;
    sums = next(points, slope);
  }
  return finish(points, sums);
}
function plainSlope(points: readonly LinePoint[]): number {
  const xBar = points.reduce((sum, p) => sum + p.x, 0) / points.length;
  const yBar = points.reduce((sum, p) => sum + p.y, 0) / points.length;
  const xy = points.reduce((sum, p) => sum + (p.x - xBar) * (p.y - yBar), 0);
  return xy / points.reduce((sum, p) => sum + (p.x - xBar) ** 2, 0);
}
function next(points: readonly LinePoint[], slope: number): Sums {
  const weights = points.map((p) => 1 / (p.uy ** 2 + (slope * p.ux) ** 2));
  const total = weights.reduce((sum, w) => sum + w, 0);
  const xBar = points.reduce((sum, p, i) => sum + weights[i] * p.x, 0) / total;
  const yBar = points.reduce((sum, p, i) => sum + weights[i] * p.y, 0) / total;
  const betas = points.map(
    (p, i) => weights[i] * ((p.x - xBar) * p.uy ** 2 + slope * (p.y - yBar) * p.ux ** 2),
  );
  const above = points.reduce((sum, p, i) => sum + weights[i] * betas[i] * (p.y - yBar), 0);
  const below = points.reduce((sum, p, i) => sum + weights[i] * betas[i] * (p.x - xBar), 0);
  return { slope: above / below, xBar, yBar, weights, betas };
}
function finish(points: readonly LinePoint[], { slope, xBar, yBar, weights, betas }: Sums): LineFit {
  const intercept = yBar - slope * xBar;
  const total = weights.reduce((sum, w) => sum + w, 0);
  const adjusted = betas.map((beta) => xBar + beta);
  const xAdjusted = adjusted.reduce((sum, x, i) => sum + weights[i] * x, 0) / total;
  const spread = adjusted.reduce((sum, x, i) => sum + weights[i] * (x - xAdjusted) ** 2, 0);
  const uSlope = Math.sqrt(1 / spread);
  const chi2 = points.reduce((sum, p, i) => sum + weights[i] * (p.y - intercept - slope * p.x) ** 2, 0);
  const uIntercept = Math.sqrt(1 / total + xAdjusted ** 2 * uSlope ** 2);
  return {
    slope,
    intercept,
    uSlope,
    uIntercept,
    covariance: -xAdjusted * uSlope ** 2,
    chi2,
    dof: points.length - 2,
  };
}
