// SPDX-License-Identifier: MIT
// What a person does with the steering's linkage and the wheels, told from the words of a step.
import { stopRad, type Hitched } from './linkage.ts';
import type { CarParameters } from './parameters.ts';
import type { Servo } from './servo.ts';

const acts: readonly (readonly [RegExp, Hitched])[] = [
  [/linkage (is )?off|take the linkage off/, 'off'],
  [/wheels hang/, 'droop'],
  [/suspension (is )?pressed down|press the suspension/, 'compression'],
  [/on its tyres/, 'tyres'],
  [/linkage on/, 'bare'],
];
/** Place in the radio's widths of the steering. */
const wheels: readonly (readonly [RegExp, 0 | 1 | 2])[] = [
  [/hear for the steering with the wheel fully left/, 0],
  [/hear for the steering with the wheel at rest/, 1],
  [/hear for the steering with the wheel fully right/, 2],
];
const ends: readonly (readonly [RegExp, 1 | -1])[] = [
  [/which end point .* on the side of shorter/, -1],
  [/which end point .* on the side of longer/, 1],
];
const sideOf = (sign: 1 | -1) => (sign < 0 ? 'short' : 'long');
const lookedAtWithWheels = 2;
const raceMin = 8;

interface Steered {
  readonly car: CarParameters;
  readonly servo: Servo;
}
/** Gives the figure that the words ask for, if it is one of the steering. */
export function linkageHand({ servo, car }: Steered, words: string): number | undefined {
  const said = words.toLowerCase();
  const end = ends.find(([pattern]) => pattern.test(said));
  if (end)
    return (
      (car.servo.centreS +
        (end[1] * stopRad(car.servo.linkage, 'bare', sideOf(end[1]))) / car.servo.radPerS) *
      1e6
    );
  const held = wheels.find(([pattern]) => pattern.test(said));
  if (held) return Math.round(car.radio.steeringS[held[1]] * 1e6);
  if (/how many .*with the wheels on/.test(said)) return lookedAtWithWheels;
  if (/how long is a race/.test(said)) return raceMin;
  const act = acts.find(([pattern]) => pattern.test(said));
  if (act) servo.linkage.hitch(act[1], servo.hornRad);
  return undefined;
}
