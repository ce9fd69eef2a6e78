// SPDX-License-Identifier: MIT
// Least squares with any curve: the library ml-levenberg-marquardt finds the parameters, the covariance is the
// inverse of J^T W J at the optimum. The library adds its damping to the plain diagonal, never takes a bad step
// back, throws on an infinite slope and weighs its error by u instead of 1/u; so it is given whitened points,
// parameters in units of their column of J, and fresh rounds from the best point so far. It knows numbers only.
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { covarianceOf, type Matrix } from './normal-equations.ts';

export type Curve = (parameters: readonly number[]) => (x: number) => number;
export interface CurvePoint {
  readonly x: number;
  readonly y: number;
  readonly u: number;
}
export interface CurveFit {
  readonly parameters: readonly number[];
  /** From the points' own u; times chi2/dof to take it from the scatter. */
  readonly covariance: Matrix;
  readonly chi2: number;
  readonly dof: number;
}
interface Best {
  readonly parameters: readonly number[];
  readonly chi2: number;
}
const roundsAtMost = 40;
const stepsInRound = 12;
/** Damping of the first step of a round; a round that found nothing is tried again more cautiously. */
const dampings = [1e-6, 1e-2, 1, 100] as const;

/** Null when the points can't tell the parameters apart, or the search ends where there is no minimum. */
export function curveFit(
  curve: Curve,
  points: readonly CurvePoint[],
  start: readonly number[],
): CurveFit | null {
  const dof = points.length - start.length;
  if (dof < 1) return null;
  const best = search(curve, points, start);
  const slopes = jacobian(curve, points, best.parameters);
  const covariance = covarianceOf(slopes);
  return covariance && isLowest(curve, points, best, slopes) ? { ...best, covariance, dof } : null;
}
function search(curve: Curve, points: readonly CurvePoint[], start: readonly number[]): Best {
  let best: Best = { parameters: start, chi2: chi2Of(curve, points, start) };
  let caution = 1;
  for (let turn = 0; turn < roundsAtMost; turn++) {
    const found = round(curve, points, best, dampings[caution]);
    const moved = movedBy(best.parameters, found.parameters);
    const better = found.chi2 < best.chi2;
    if (better) best = found;
    if (better ? moved < 1e-13 : caution === dampings.length - 1) break;
    caution = better ? Math.max(0, caution - 1) : caution + 1;
  }
  return best;
}
function round(curve: Curve, points: readonly CurvePoint[], from: Best, damping: number): Best {
  const units = jacobian(curve, points, from.parameters).map((column) => 1 / (Math.hypot(...column) || 1));
  const real = (scaled: readonly number[]) => scaled.map((value, k) => value * units[k]);
  const found = levenbergMarquardt(
    { x: points.map((_, i) => i), y: points.map(({ y, u }) => y / u) },
    (scaled) => {
      const at = curve(real(scaled));
      return (i) => orElse(at(points[i].x) / points[i].u, Number.NaN);
    },
    {
      initialValues: from.parameters.map((value, k) => value / units[k]),
      minValues: units.map(() => Number.NEGATIVE_INFINITY),
      maxValues: units.map(() => Number.POSITIVE_INFINITY),
      damping,
      maxIterations: stepsInRound,
      errorTolerance: 0,
      jacobianFunction: (scaled) => {
        const columns = jacobian(curve, points, real(scaled));
        return (i) => columns.map((column, k) => orElse(column[i] * units[k], 0));
      },
    },
  );
  const parameters = real(found.parameterValues);
  return { parameters, chi2: chi2Of(curve, points, parameters) };
}
/** Not a number ends a round; the library goes on with an infinity and throws later. */
const orElse = (value: number, instead: number): number => (Number.isFinite(value) ? value : instead);

function chi2Of(curve: Curve, points: readonly CurvePoint[], parameters: readonly number[]): number {
  const at = curve(parameters);
  return points.reduce((sum, { x, y, u }) => sum + ((y - at(x)) / u) ** 2, 0);
}
/** At a minimum the residuals stand at right angles to every slope, as far as a double can tell. */
function isLowest(curve: Curve, points: readonly CurvePoint[], best: Best, slopes: Matrix): boolean {
  const at = curve(best.parameters);
  const residuals = points.map(({ x, y, u }) => (y - at(x)) / u);
  const floor = 1e-9 * Math.hypot(...points.map(({ y, u }) => y / u));
  return slopes.every((column) => {
    const along = column.reduce((sum, slope, i) => sum + slope * residuals[i], 0) / Math.hypot(...column);
    return Math.abs(along) < 1e-5 * Math.hypot(...residuals) + floor;
  });
}
const movedBy = (from: readonly number[], to: readonly number[]): number =>
  Math.max(...from.map((value, k) => Math.abs(to[k] - value) / (Math.abs(to[k]) || 1)));

/** One column a parameter: slope of the whitened curve, five-point rule. */
function jacobian(curve: Curve, points: readonly CurvePoint[], at: readonly number[]): Matrix {
  return at.map((value, k) => {
    const step = 1e-4 * (Math.abs(value) || 1);
    const shifted = (by: number) => curve(at.map((other, j) => (j === k ? other + by * step : other)));
    const [back2, back, on, on2] = [-2, -1, 1, 2].map(shifted);
    return points.map(({ x, u }) => (8 * (on(x) - back(x)) - (on2(x) - back2(x))) / (12 * step * u));
  });
}
