// SPDX-License-Identifier: MIT
// Drag over the angle of spur and pinion, as shares of the mean drag. From Newton, T = Ke i - J dw/dt, both parts over the
// mean: i goes with the pack current as the duty stands still, and Ke/J falls out through the run-down, whose fall at that
// speed is the mean drag over the inertia. So neither kV nor duty nor inertia is needed, and of order n of the spur
//   T_n/T_0 = I_n/I_0 - (dw/dt)_n / fall.
// The pinion turns with the rotor: its speed ripple hides behind uneven Hall lines, so it comes from the current, through
// w = -R i/Ke. Pure; it knows no limits.
import { deceleration } from '#core/measurements/coast-down';
import { markedSpeed, orderFit, type Harmonic, type OrderFit } from '#core/measurements/order-fit';
import { NotMeasurable, steadyOf, tapOf, zeroOf } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import { runDown } from '../motor-coastdown/run-down.ts';
import { requireProven } from '../proven-spin.ts';
import type { Evidence, MeshRun } from './evidence.ts';
import { angleAt, markedAngles, spurPerShaft, type Marked } from './mesh-angle.ts';

type Input = AnalysisInput<Evidence>;
const spurOrders = [1, 2, 3, 4] as const;
/** Orders so near to each other, or to one of the rotor, in what the marks can tell are not told apart. */
const near = 0.02;
const pinionOrder = 1;

export interface MeshWaves {
  readonly run: MeshRun;
  readonly speedRadS: number;
  /** Mean pack current less what flows at neutral, A. */
  readonly driveA: number;
  /** Fall of the speed at that speed with nothing driving, rad/s2, and its standard deviation. */
  readonly fall: readonly [number, number];
  /** Orders of the spur's turn. */
  readonly spur: readonly DragWave[];
  /** Current at once a turn of the pinion, of the mean. */
  readonly pinion: { readonly share: number; readonly u: number };
}
/** One order: drag of the mean, cos and sin over the spur's angle past the dot, with their standard deviation. */
export interface DragWave {
  readonly order: number;
  readonly cos: number;
  readonly sin: number;
  readonly u: number;
}
export function meshWaves(input: Input): MeshWaves {
  const { run, slow, coast } = requiredRun(input);
  const marked = markedAngles(input.samples, input.car, run.dotS, slow);
  const ratio = spurPerShaft(input.car);
  const everyMarks = 2 * input.car.motor.polePairs;
  const orders = tellableOrders(ratio, everyMarks);
  const perShaft = orders.map((n) => n * ratio);
  const speed = markedSpeed(marked.timesS, { ...marked, everyMarks }, perShaft);
  if (!speed) throw new NotMeasurable('Too few Hall edges for the orders of the spur. Run again.');
  const current = currentOver(input, slow, marked, [...perShaft, pinionOrder]);
  const { fit } = runDown(input, coast, 'linear');
  const fall = deceleration(fit, speed.mean);
  const seen = { speed, current, driveA: driveOf(input, run, slow), fall: fall[0] };
  return {
    run,
    speedRadS: speed.mean,
    driveA: seen.driveA,
    fall,
    spur: orders.map((order, k) => ({ ...drag(input, seen, k), order })),
    pinion: pinionOf(input, seen),
  };
}
/** Marks that pass so many times a turn of the shaft show an order folded at half as many. */
export function tellableOrders(ratio: number, marks: number): number[] {
  const folded = (order: number) => Math.min(order % marks, marks - (order % marks));
  return spurOrders.reduce<number[]>((kept, n) => {
    const seen = folded(n * ratio);
    const others = [Math.round(seen), ...kept.map((one) => folded(one * ratio))];
    return others.some((other) => Math.abs(seen - other) < near) ? kept : [...kept, n];
  }, []);
}
function requiredRun({ evidence, car }: Input) {
  if (!evidence.teethKnown || !evidence.run || !car.drive)
    throw new NotMeasurable(
      'The teeth of pinion and spur are not known. Enter them on the drive train, then run again.',
    );
  requireProven(evidence.run);
  const { turning } = evidence.run;
  if (!turning) throw new NotMeasurable('The run ended before the slow turning. Run again.');
  return { run: evidence.run, ...turning };
}
function driveOf(input: Input, { idle }: MeshRun, slow: MeshRun['idle']): number {
  zeroOf(input, 'packCurrentNarrow');
  return steadyOf(input, 'packCurrentNarrow', slow).mean - steadyOf(input, 'packCurrentNarrow', idle).mean;
}
/** Pack current over the shaft's angle. */
function currentOver(
  { samples }: Input,
  { fromS, toS }: MeshRun['idle'],
  marked: Marked,
  orders: readonly number[],
): OrderFit {
  const { timeS, value } = samples.series('packCurrentNarrow', fromS, toS);
  const angles = timeS.map((t) => angleAt(marked, t));
  const known = Array.from(angles.keys()).filter((k) => Number.isFinite(angles[k]));
  const fit = orderFit(
    known.map((k) => angles[k]),
    known.map((k) => value[k]),
    orders,
  );
  if (!fit) throw new NotMeasurable('The current can not be told by the angle of the spur. Run again.');
  return fit;
}
interface Seen {
  readonly speed: OrderFit;
  readonly current: OrderFit;
  readonly driveA: number;
  readonly fall: number;
}
/** What the tap's filter took and held back is given back: (P - jQ)(1 + j f/corner). */
function unfiltered(input: Input, { cos, sin, order }: Harmonic, speedRadS: number): Harmonic {
  const x = (order * speedRadS) / (2 * Math.PI) / tapOf(input.rig, 'packCurrentNarrow').cornerHz;
  return { order, cos: cos + sin * x, sin: sin - cos * x };
}
function drag(input: Input, { speed, current, driveA, fall }: Seen, k: number): Omit<DragWave, 'order'> {
  const amps = unfiltered(input, current.harmonics[k], speed.mean);
  const ripple = speed.harmonics[k];
  const radS = ripple.order * speed.mean;
  const own = Math.sqrt(current.covariance[2 * k][2 * k]) / driveA;
  const swing = (radS * Math.sqrt(speed.covariance[2 * k][2 * k])) / fall;
  return {
    cos: amps.cos / driveA - (radS * ripple.sin) / fall,
    sin: amps.sin / driveA + (radS * ripple.cos) / fall,
    u: Math.hypot(own, swing),
  };
}
function pinionOf(input: Input, { speed, current, driveA }: Seen): MeshWaves['pinion'] {
  const k = current.harmonics.length - 1;
  const { cos, sin } = unfiltered(input, current.harmonics[k], speed.mean);
  return { share: Math.hypot(cos, sin) / driveA, u: Math.sqrt(current.covariance[2 * k][2 * k]) / driveA };
}
/** Drag at an angle of the spur past the dot, of the mean drag. */
export const dragAt = (spur: readonly DragWave[], spurRad: number): number =>
  spur.reduce(
    (sum, { order, cos, sin }) => sum + cos * Math.cos(order * spurRad) + sin * Math.sin(order * spurRad),
    1,
  );
export interface PolarPoint {
  readonly degrees: number;
  readonly drag: number;
}
/** The curve for a polar picture: one point a degree of the spur past its paint dot, drag of its mean. */
export const polarOf = ({ spur }: MeshWaves): PolarPoint[] =>
  Array.from({ length: 360 }, (_, degrees) => ({ degrees, drag: dragAt(spur, (degrees * Math.PI) / 180) }));
