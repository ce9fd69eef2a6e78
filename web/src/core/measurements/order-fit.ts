// SPDX-License-Identifier: MIT
// What goes with the angle of a turning part: harmonics of a reading over the angle, and harmonics of a speed from the
// times at which marks pass. An order is cycles a turn of the part whose angle is given, whole or not, so that parts
// coupled by teeth can be told apart. Least squares, with the covariance from the scatter. It knows numbers only.
import { leastSquares, type LinearFit, type Matrix } from './normal-equations.ts';

export interface Harmonic {
  readonly order: number;
  readonly cos: number;
  readonly sin: number;
}
export interface OrderFit {
  readonly mean: number;
  readonly harmonics: readonly Harmonic[];
  /** Of cos and sin of each order in turn. */
  readonly covariance: Matrix;
  readonly dof: number;
}
/** y = mean + drift in place (straight and square) + sum of cos and sin of order times angle. Null when the points
 *  can't tell the orders apart. */
export function orderFit(
  angleRad: ArrayLike<number>,
  y: ArrayLike<number>,
  orders: readonly number[],
): OrderFit | null {
  const places = Array.from(y, (_, k) => (2 * k) / (y.length - 1) - 1);
  const columns = [
    places.map(() => 1),
    places,
    places.map((x) => x * x - 1 / 3),
    ...orders.flatMap((order) => [
      Array.from(angleRad, (angle) => Math.cos(order * angle)),
      Array.from(angleRad, (angle) => Math.sin(order * angle)),
    ]),
  ];
  const fit = leastSquares(columns, Array.from(y));
  return fit && told(fit, y.length, 3, fit.amounts[0], orders, 1);
}
/** Harmonics of the speed (rad/s) of a part that marks pass at `stepRad` one from the next, the first at `startRad`.
 *  Marks out of place come round every `everyMarks` and fall out, and with them whatever has their period.
 *  To first order in the ripple: a time is the integral of 1/w0 - dw/w0^2 over the step. */
export function markedSpeed(
  timesS: ArrayLike<number>,
  { stepRad, startRad, everyMarks }: Marks,
  orders: readonly number[],
): OrderFit | null {
  const count = timesS.length - 1;
  if (count < 4) return null;
  const steps = Array.from({ length: count }, (_, k) => k);
  const speed = (stepRad * count) / (timesS[count] - timesS[0]);
  const place = (k: number) => (2 * k) / (count - 1) - 1;
  const angle = (k: number) => startRad + k * stepRad;
  const columns = [
    ...Array.from({ length: everyMarks }, (_, mark) => steps.map((k) => (k % everyMarks === mark ? 1 : 0))),
    steps.map(place),
    steps.map((k) => place(k) ** 2 - 1 / 3),
    ...orders.flatMap((order) => [
      steps.map((k) => (Math.sin(order * angle(k + 1)) - Math.sin(order * angle(k))) / order),
      steps.map((k) => (Math.cos(order * angle(k)) - Math.cos(order * angle(k + 1))) / order),
    ]),
  ];
  const fit = leastSquares(
    columns,
    steps.map((k) => timesS[k + 1] - timesS[k]),
  );
  return fit && told(fit, count, everyMarks + 2, speed, orders, -(speed ** 2));
}
export interface Marks {
  readonly stepRad: number;
  readonly startRad: number;
  readonly everyMarks: number;
}
function told(
  { amounts, covariance, chi2 }: LinearFit,
  count: number,
  before: number,
  mean: number,
  orders: readonly number[],
  scale: number,
): OrderFit {
  const dof = Math.max(1, count - amounts.length);
  const variance = (chi2 / dof) * scale ** 2;
  const at = (k: number) => scale * amounts[before + k];
  return {
    mean,
    harmonics: orders.map((order, k) => ({ order, cos: at(2 * k), sin: at(2 * k + 1) })),
    covariance: covariance.slice(before).map((row) => row.slice(before).map((value) => variance * value)),
    dof,
  };
}
