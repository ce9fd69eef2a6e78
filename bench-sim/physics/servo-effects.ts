// SPDX-License-Identifier: MIT
// What the faults of servo and linkage do to a healthy car's numbers. Severity 0 leaves every number as it was.
import type { Effects } from './fault-effects.ts';
import { stallA } from './steady-state.ts';

export const servoEffects: Effects = {
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
