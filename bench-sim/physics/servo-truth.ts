// SPDX-License-Identifier: MIT
// True values of the results that a servo out of the car has: its horn, its rest, its moving current and its speed.
// From the model's own equations, but for what the rest was: that is kept as it happened.
import type { CarParameters } from './parameters.ts';
import type { Servo } from './servo.ts';
import type { ServoRest } from './servo-rest.ts';
import type { ServoSweep } from './servo-sweep.ts';
import { railSourceOhm, railV, servoOhm, stallPlugA } from './steady-state.ts';

interface Reached {
  readonly car: CarParameters;
  readonly servo: Servo;
  readonly rest: ServoRest;
  readonly sweep: ServoSweep;
  readonly warmth: { readonly servo: { readonly innerC: number } };
}
const degrees = Math.PI / 180;
const sixtyRad = 60 * degrees;
const pulseUs = 600;
/** Middle of a push of 240 ms at some 15 W and 0.9 J/K (computed). */
const pushWarmsK = 2.5;

export const servoTruth = (plant: Reached): Record<string, number> => ({
  ...hornTruth(plant.car),
  ...restTruth(plant),
  ...movingTruth(plant),
  ...sweepTruth(plant),
  ...limitedTruth(plant),
});
function hornTruth({ servo: { horn, radPerS } }: CarParameters): Record<string, number> {
  const perUs = (horn.clockwise * radPerS) / 1e6;
  return {
    'horn-offset': Math.abs(horn.seatRad) / degrees,
    'sub-trim': -horn.seatRad / perUs,
    'degrees-per-us': perUs / degrees,
  };
}
function restTruth({ car, rest }: Reached): Record<string, number> {
  const { deadBandRad, radPerS } = car.servo;
  const found = rest.longest();
  return {
    'dead-band': (deadBandRad / radPerS) * 1e6,
    ...(found && {
      'centre-current': found.meanA,
      'hunting-current': found.alternatingA,
      'hunting-pulses': found.pulsesPerS,
    }),
  };
}
/** A servo whose electronics limit it is told as it is on its own rail, its winding some degrees into the push. */
function limitedTruth({ car, servo, warmth }: Reached): Record<string, number> {
  const { currentLimitA, electronicsA } = car.servo;
  const pushedC = (servo.pushStartC ?? warmth.servo.innerC) + pushWarmsK;
  const sourceOhm = railSourceOhm(car) + car.railShuntOhm;
  const restV = railV(car, 0);
  let plugA = 0;
  for (let i = 0; i < 6; i++)
    plugA = stallPlugA(car.servo, restV - sourceOhm * plugA, pushedC) + electronicsA;
  return currentLimitA > 0 && currentLimitA < (restV - sourceOhm * plugA) / servoOhm(car.servo, pushedC)
    ? { 'stall-current': plugA }
    : {};
}
function sweepTruth({ car, sweep }: Reached): Record<string, number> {
  const seen = sweep.seen();
  if (!seen) return {};
  const { electronicsA } = car.servo;
  const sorted = seen.placesA.toSorted((a, b) => a - b);
  const middle = sorted.slice(sorted.length / 2 - 1, sorted.length / 2 + 1);
  return {
    'sweep-current': seen.meanA,
    'tight-spot': (sorted[sorted.length - 1] - electronicsA) / ((middle[0] + middle[1]) / 2 - electronicsA),
  };
}
export interface Running {
  readonly plugV: number;
  readonly currentA: number;
  readonly shaftRadS: number;
}
/** Bridge fully on, horn free: i = (a + b w)/k, V = i R + k w. */
export function runningAt({ servo }: CarParameters, plugV: number, windingC: number): Running {
  const { torqueNmPerA: k, coulombNm: a, viscousNms: b, gear } = servo;
  const ohm = servoOhm(servo, windingC);
  const motorRadS = (plugV - (ohm * a) / k) / (k + (ohm * b) / k);
  return { plugV, currentA: (a + b * motorRadS) / k, shaftRadS: motorRadS / gear };
}
/** On this car's own rail, which it loads. */
function runningInCar(car: CarParameters, windingC: number): Running {
  const sourceOhm = railSourceOhm(car) + car.railShuntOhm;
  const restV = railV(car, 0);
  let running = runningAt(car, restV, windingC);
  for (let i = 0; i < 6; i++) running = runningAt(car, restV - sourceOhm * running.currentA, windingC);
  return running;
}
/** At the rated voltage and 25 C, as a label means it. */
export const secondsPer60 = (car: CarParameters): number =>
  sixtyRad / runningAt(car, car.servo.ratedV, 25).shaftRadS;

function movingTruth({ car, warmth }: Reached): Record<string, number> {
  const { innerC } = warmth.servo;
  const running = runningInCar(car, innerC);
  const rated = runningAt(car, car.servo.ratedV, innerC);
  return {
    'moving-current': running.currentA + car.servo.electronicsA,
    'direction-asymmetry': 0,
    'time-per-60': sixtyRad / running.shaftRadS,
    'time-per-60-rated': sixtyRad / rated.shaftRadS,
    'time-per-600-us': (pulseUs * 1e-6 * car.servo.radPerS) / running.shaftRadS,
  };
}
