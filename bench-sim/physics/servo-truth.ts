// SPDX-License-Identifier: MIT
// True values of the results that a servo out of the car has: its horn, its rest, its moving current and its speed.
// From the model's own equations, but for what the rest was: that is kept as it happened.
import type { CarParameters } from './parameters.ts';
import type { Servo } from './servo.ts';
import type { ServoRest } from './servo-rest.ts';
import { railSourceOhm, railV, servoOhm } from './steady-state.ts';

interface Reached {
  readonly car: CarParameters;
  readonly servo: Servo;
  readonly rest: ServoRest;
  readonly warmth: { readonly servo: { readonly innerC: number } };
}
const degrees = Math.PI / 180;
const sixtyRad = 60 * degrees;
const pulseUs = 600;

export const servoTruth = (plant: Reached): Record<string, number> => ({
  ...hornTruth(plant.car),
  ...restTruth(plant),
  ...movingTruth(plant),
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
