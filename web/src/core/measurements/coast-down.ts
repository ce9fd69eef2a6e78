// SPDX-License-Identifier: MIT
// A rotor that runs down with open leads: dw/dt = -(a + b w), so w = w0 - (a + b w0)(1 - e^(-b t))/b; dry friction a
// and drag b are torque over inertia. Fitted to speeds over whole turns. It knows edges and numbers only.
import { curveFit, type CurvePoint } from './curve-fit.ts';
import type { Matrix } from './normal-equations.ts';

export interface CoastDown {
  readonly startRadS: number;
  /** Dry friction over inertia, rad/s2. */
  readonly frictionRadS2: number;
  /** Drag over inertia, 1/s. */
  readonly dragPerS: number;
  /** Of start, friction and drag, from the scatter if it is larger than the points' own u. */
  readonly covariance: Matrix;
  readonly scatter: number;
  readonly dof: number;
}
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
export function coastingSpeed([startRadS, frictionRadS2, dragPerS]: readonly number[]) {
  return (timeS: number): number => {
    const bt = dragPerS * timeS;
    const grown = Math.abs(bt) < 1e-9 ? timeS * (1 - bt / 2) : -Math.expm1(-bt) / dragPerS;
    return startRadS - (frictionRadS2 + dragPerS * startRadS) * grown;
  };
}
/** Times count from the first point. Null with fewer than eight points, or when the speed doesn't fall. */
export function coastDown(points: readonly CurvePoint[]): CoastDown | null {
  if (points.length < fewestPoints) return null;
  const [{ x: zeroS, y: first }] = points;
  const last = points[points.length - 1];
  if (!(last.y < first)) return null;
  const shifted = points.map((point) => ({ ...point, x: point.x - zeroS }));
  const mean = (first - last.y) / (last.x - zeroS);
  const found = curveFit(coastingSpeed, shifted, [first, mean / 2, mean / (first + last.y)]);
  if (!found) return null;
  const [startRadS, frictionRadS2, dragPerS] = found.parameters;
  const scatter = Math.sqrt(found.chi2 / found.dof);
  const inflated = Math.max(1, scatter) ** 2;
  const covariance = found.covariance.map((row) => row.map((value) => value * inflated));
  return { startRadS, frictionRadS2, dragPerS, covariance, scatter, dof: found.dof };
}
/** Deceleration at a speed, rad/s2, with its standard deviation: times inertia it is the torque of all losses. */
export function deceleration(fit: CoastDown, speedRadS: number): readonly [number, number] {
  const { covariance: c } = fit;
  const variance = c[1][1] + 2 * speedRadS * c[1][2] + speedRadS ** 2 * c[2][2];
  return [fit.frictionRadS2 + fit.dragPerS * speedRadS, Math.sqrt(Math.max(0, variance))];
}
/** Seconds from the first point until it stands still, Infinity for a rotor without dry friction. */
export function stopsAfterS({ startRadS, frictionRadS2, dragPerS }: CoastDown): number {
  if (frictionRadS2 <= 0) return Number.POSITIVE_INFINITY;
  const ratio = (dragPerS * startRadS) / frictionRadS2;
  return Math.abs(ratio) < 1e-9 ? startRadS / frictionRadS2 : Math.log1p(ratio) / dragPerS;
}
