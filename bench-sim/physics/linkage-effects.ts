// SPDX-License-Identifier: MIT
// What the faults of linkage, horn and tyres do to a healthy car's numbers. Severity 0 leaves every number as it was.
import type { Effects } from './fault-effects.ts';
import { leftSide } from './linkage-truth.ts';
import type { CarParameters, ServoParameters } from './parameters.ts';
import { stallA } from './steady-state.ts';

const stallNm = (servo: ServoParameters): number => servo.torqueNmPerA * servo.gear * stallA(servo, 25);

function bind(car: CarParameters, side: 'left' | 'right', severity: number): void {
  const { linkage } = car.servo;
  const stop = (side === 'left') === (leftSide(car) === 'short') ? 'shortRad' : 'longRad';
  linkage[stop] *= 1 - 0.4 * severity;
}
export const linkageEffects: Effects = {
  'binding-left': (car, severity) => bind(car, 'left', severity),
  'binding-right': (car, severity) => bind(car, 'right', severity),
  'slipping-horn': ({ servo }, severity) => {
    const mostNm = stallNm(servo);
    servo.linkage.holdsNm = mostNm * (servo.linkage.scrubNm / 2 / mostNm) ** severity;
  },
  'heavy-scrub': ({ servo }, severity) => {
    servo.linkage.scrubNm += severity * (0.5 * stallNm(servo) - servo.linkage.scrubNm);
  },
};
