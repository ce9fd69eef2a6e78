// SPDX-License-Identifier: MIT
// A rotor that runs down with open leads: dw/dt = -(a + b w + c w^2); dry friction a, drag b and drag with the square of
// speed c are torque over inertia. The equation of Riccati with constant coefficients has, from w0 on,
//   w = (w0 (1 - b q) - 2 a q)/(1 + (2 c w0 + b) q),  q = tanh(s t/2)/s,  s^2 = b^2 - 4 a c   (tan for s^2 < 0).
// Fitted to speeds over whole turns. It knows edges and numbers only.
import { curveFit, type CurvePoint } from './curve-fit.ts';
import type { Matrix } from './normal-equations.ts';

export interface CoastDown {
  readonly startRadS: number;
  /** Dry friction over inertia, rad/s2. */
  readonly frictionRadS2: number;
  /** Drag over inertia, 1/s. */
  readonly dragPerS: number;
  /** Drag with the square of speed over inertia, 1/rad; 0 where it was not asked for. */
  readonly squarePerRad: number;
  /** Of start, friction, drag (and square drag), from the scatter if it is larger than the points' own u. */
  readonly covariance: Matrix;
  readonly scatter: number;
  readonly dof: number;
}
/** What a fit is of: dry friction and drag, or square drag as well. */
export type Drags = 'linear' | 'square';
const fewestPoints = 8;

/** Speeds over `turnsTogether` whole electrical turns each, none sharing an edge's error with its second neighbour.
 *  `edgesS`: rising edges of one Hall line, so that lines out of place and uneven halves drop out. A speed is the
 *  mean over its turns and stands at their middle: keep them short against the fall. */
export function turnSpeeds(
  edgesS: ArrayLike<number>,
  polePairs: number,
  uEdgeS: number,
  turnsTogether = 1,
): CurvePoint[] {
  const angleRad = (2 * Math.PI * turnsTogether) / polePairs;
  const count = Math.floor((edgesS.length - 1) / turnsTogether);
  return Array.from({ length: Math.max(0, count) }, (_, k) => {
    const fromS = edgesS[k * turnsTogether];
    const toS = edgesS[(k + 1) * turnsTogether];
    const speed = angleRad / (toS - fromS);
    return { x: (fromS + toS) / 2, y: speed, u: (speed * Math.SQRT2 * uEdgeS) / (toS - fromS) };
  });
}
/** Speed over time from [start, friction, drag, square drag]. */
export function coastingSpeed([w0, a, b, c = 0]: readonly number[]) {
  const square = b * b - 4 * a * c;
  const s = Math.sqrt(Math.abs(square));
  return (timeS: number): number => {
    const half = (s * timeS) / 2;
    const q = half < 1e-9 ? timeS / 2 : (square > 0 ? Math.tanh(half) : Math.tan(half)) / s;
    return (w0 * (1 - b * q) - 2 * a * q) / (1 + (2 * c * w0 + b) * q);
  };
}
/** Times count from the first point. Null with fewer than eight points, or when the speed doesn't fall. */
export function coastDown(points: readonly CurvePoint[], drags: Drags = 'linear'): CoastDown | null {
  if (points.length < fewestPoints) return null;
  const [{ x: zeroS, y: first }] = points;
  const last = points[points.length - 1];
  if (!(last.y < first)) return null;
  const shifted = points.map((point) => ({ ...point, x: point.x - zeroS }));
  const mean = (first - last.y) / (last.x - zeroS);
  const start = [first, mean / 2, mean / (first + last.y)];
  const linear = curveFit(coastingSpeed, shifted, start);
  const found =
    linear && drags === 'square' ? curveFit(coastingSpeed, shifted, [...linear.parameters, 0]) : linear;
  if (!found) return null;
  const [startRadS, frictionRadS2, dragPerS, squarePerRad = 0] = found.parameters;
  const scatter = Math.sqrt(found.chi2 / found.dof);
  const inflated = Math.max(1, scatter) ** 2;
  const covariance = found.covariance.map((row) => row.map((value) => value * inflated));
  return { startRadS, frictionRadS2, dragPerS, squarePerRad, covariance, scatter, dof: found.dof };
}
/** Deceleration at a speed, rad/s2, with its standard deviation: times inertia it is the torque of all losses. */
export function deceleration(fit: CoastDown, speedRadS: number): readonly [number, number] {
  const slopes = fit.covariance.map((_, k) => (k === 0 ? 0 : speedRadS ** (k - 1)));
  const variance = fit.covariance.reduce(
    (sum, row, i) => sum + row.reduce((part, value, j) => part + slopes[i] * slopes[j] * value, 0),
    0,
  );
  const value = fit.frictionRadS2 + (fit.dragPerS + fit.squarePerRad * speedRadS) * speedRadS;
  return [value, Math.sqrt(Math.max(0, variance))];
}
/** Seconds from the first point until it stands still, of a fit without square drag; Infinity without dry friction. */
export function stopsAfterS({ startRadS, frictionRadS2, dragPerS }: CoastDown): number {
  if (frictionRadS2 <= 0) return Number.POSITIVE_INFINITY;
  const ratio = (dragPerS * startRadS) / frictionRadS2;
  return Math.abs(ratio) < 1e-9 ? startRadS / frictionRadS2 : Math.log1p(ratio) / dragPerS;
}
