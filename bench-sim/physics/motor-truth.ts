// SPDX-License-Identifier: MIT
// True values of the motor's results beyond the no-load ones: what the sensor cable carries. What faults make happen by
// chance (drop-outs, extra pulses) has a truth only where there are none.
import type { CarParameters, MotorParameters } from './parameters.ts';
import { spurDrags } from './drive-train.ts';
import { endBellMarks, setTiming } from './motor-timing.ts';
import { kvRpmPerV, noLoad } from './steady-state.ts';

const radSPerRpm = (2 * Math.PI) / 60;

interface Reached {
  readonly car: CarParameters;
  readonly warmth: { readonly thermistorC: readonly (number | null)[] };
}
export function motorTruth({ car, warmth }: Reached): Record<string, number> {
  return {
    ...sensorLines(car),
    ...thermistorLine(car, warmth.thermistorC),
    ...runDown(car),
    ...mesh(car),
    ...timing(car),
    ...heat(car),
  };
}
function sensorLines({ motor }: CarParameters): Record<string, number> {
  const allAlive = !motor.deadHallLines.includes(true);
  return {
    'hall-liveness': allAlive ? 100 : 0,
    ...(allAlive && {
      'hall-order': motor.hallLinesSwapped ? 0 : 100,
      ...longerHalves(motor),
    }),
    ...(allAlive && motor.hallNoiseHz === 0 && { 'hall-invalid-states': 0 }),
    ...(motor.hallNoiseHz === 0 && { 'hall-extra-edges': 0 }),
    ...(motor.hallLooseHz === 0 && motor.hallNoiseHz === 0 && { 'hall-drop-outs': 0 }),
  };
}
/** Per cent of a turn on the longer side of each line. */
function longerHalves({ hallDuty }: MotorParameters): Record<string, number> {
  const longer = hallDuty.map((duty) => 100 * Math.max(duty, 1 - duty));
  return {
    'hall-a-longer-half': longer[0],
    'hall-b-longer-half': longer[1],
    'hall-c-longer-half': longer[2],
  };
}
function thermistorLine(
  { sensor, ambientC }: CarParameters,
  [motorC]: readonly (number | null)[],
): Record<string, number> {
  if (sensor.open || sensor.motorShorted || motorC === null) return {};
  return {
    'sensor-thermistor-offset': motorC - ambientC,
    ...(sensor.motorLooseHz === 0 && { 'sensor-thermistor-lost': 0 }),
  };
}

/** Of the bare motor: drag at the no-load speed of the definition, and the seconds it takes from speed to speed. */
function runDown(car: CarParameters): Record<string, number> {
  const { motor } = car;
  const lossNm = (w: number) => motor.coulombNm + (motor.viscousNms + motor.quadraticNms2 * w) * w;
  const dragNm = lossNm(noLoad(car).speedRpm * radSPerRpm);
  return {
    'coast-drag-torque': 1e3 * dragNm,
    'coast-dry-share': (100 * motor.coulombNm) / dragNm,
    'rotor-inertia': 1e7 * motor.inertiaKgM2,
    'coast-time': secondsBetween(lossNm, motor.inertiaKgM2),
  };
}
/** From 10,000 to 5,000 rpm: the integral of J/loss over the speed, by Simpson's rule. */
function secondsBetween(lossNm: (w: number) => number, inertiaKgM2: number): number {
  const [low, high] = [5000 * radSPerRpm, 10_000 * radSPerRpm];
  const parts = 100;
  const h = (high - low) / parts;
  const at = (k: number) => inertiaKgM2 / lossNm(low + k * h);
  const inner = Array.from({ length: parts - 1 }, (_, k) => (k % 2 === 0 ? 4 : 2) * at(k + 1));
  return (h / 3) * (at(0) + at(parts) + inner.reduce((sum, value) => sum + value, 0));
}

/** What ten degrees of the end bell bring and cost from its first to its third mark; the person sets it true. */
function timing(car: CarParameters): Record<string, number> {
  const at = (degrees: number) => {
    const motor = { ...car.motor };
    setTiming(motor, degrees);
    return { kv: kvRpmPerV(motor), currentA: noLoad({ ...car, motor }).currentA };
  };
  const [least, most] = [at(endBellMarks[0]), at(endBellMarks[2])];
  const perTen = (to: number, from: number) => (1000 * (to / from - 1)) / (endBellMarks[2] - endBellMarks[0]);
  return {
    'timing-drift': 0,
    'timing-speed-gain': perTen(most.kv, least.kv),
    'timing-current-cost': perTen(most.currentA, least.currentA),
  };
}
/** Over a turn of the spur, and of the pinion: greatest less least drag, of the mean of motor and train at 3,000 rpm. */
function mesh({ motor, drive }: CarParameters): Record<string, number> {
  const { tightDegrees, spanNm, meanNm } = spurDrags(drive);
  const w = 3000 * radSPerRpm;
  const dragNm = meanNm + motor.coulombNm + (motor.viscousNms + motor.quadraticNms2 * w) * w;
  return {
    'tight-place': tightDegrees,
    'spur-variation': (100 * spanNm) / dragNm,
    'pinion-variation': (200 * drive.eccentricNm) / dragNm,
  };
}

const heat = ({ motor }: CarParameters): Record<string, number> => ({
  'motor-heat-capacity': motor.windingJPerK + motor.canJPerK,
  'motor-thermal-resistance': motor.canToAirKPerW,
});
