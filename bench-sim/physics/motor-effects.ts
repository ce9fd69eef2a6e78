// SPDX-License-Identifier: MIT
// What the faults of motor, sensors and drive train do to a healthy car's numbers. Severity 0 leaves every number as it was.
import type { Effects } from './fault-effects.ts';

export const motorEffects: Effects = {
  'worn-bearings': ({ motor }, severity) => {
    const more = 1 + 1.2 * severity;
    motor.coulombNm *= more;
    motor.viscousNms *= more;
    motor.quadraticNms2 *= more;
  },
  'weak-rotor': ({ motor }, severity) => {
    motor.fluxVs *= 1 - 0.12 * severity;
  },
  'dead-hall-line': ({ motor }, severity) => {
    motor.hallADead = severity > 0.5;
  },
  'open-thermistor': ({ sensor }, severity) => {
    sensor.open = severity > 0.5;
  },
};
