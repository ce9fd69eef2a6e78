// SPDX-License-Identifier: MIT
// What the faults of servo and linkage do to a healthy car's numbers. Severity 0 leaves every number as it was.
import type { Effects } from './fault-effects.ts';
import { stallA } from './steady-state.ts';

const degrees = Math.PI / 180;

export const servoEffects: Effects = {
  'horn-tooth-off': ({ servo: { horn } }, severity) => {
    horn.seatRad += (Math.sign(horn.seatRad) || 1) * severity * (360 / horn.splineTeeth) * degrees;
  },
  'hunting-servo': ({ servo }, severity) => {
    servo.wornJumpRad = severity * 2 * degrees;
  },
  'wide-dead-band': ({ servo }, severity) => {
    servo.deadBandRad *= 1 + 4 * severity;
  },
  'stiff-gear-train': ({ servo }, severity) => {
    servo.coulombNm *= 1 + 5 * severity;
    servo.viscousNms *= 1 + 5 * severity;
  },
  'tight-spot': ({ servo }, severity) => {
    servo.tightNm = 5 * severity * servo.coulombNm;
  },
  'failing-servo-motor': ({ servo }, severity) => {
    const more = 1 / (1 - 0.4 * severity);
    servo.copperOhm *= more;
    servo.fixedOhm *= more;
  },
  // At full stall torque a wholly loose block gives way at 100 degrees a second.
  'block-loose': ({ servo }, severity) => {
    const stallNm = servo.torqueNmPerA * servo.gear * stallA(servo, 25);
    servo.blockCreep = (severity * 1.75) / stallNm;
  },
};
/** Kinds of servo rather than faults: the label is that of the kind. */
export const servoKinds: Effects = {
  'soft-start-servo': ({ servo }, severity) => {
    servo.softStartS = 0.12 * severity;
  },
  'current-limited-servo': ({ servo }, severity) => {
    servo.currentLimitA = (1 - 0.25 * severity) * stallA(servo, 25);
  },
};
