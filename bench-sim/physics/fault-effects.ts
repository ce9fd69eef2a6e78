// SPDX-License-Identifier: MIT
// Spoils a healthy car by the named faults. Severity 0 leaves every number as it was. Faults of the cable
// and of the stop line are made elsewhere.
import { severityOf, type FaultName, type Faults } from '../faults/faults.ts';
import type { CarParameters } from './parameters.ts';
import { railSourceOhm, stallA } from './steady-state.ts';

type Effect = (car: CarParameters, severity: number) => void;

const effects: Partial<Record<FaultName, Effect>> = {
  'worn-bearings': ({ motor }, severity) => {
    const more = 1 + 1.2 * severity;
    motor.coulombNm *= more;
    motor.viscousNms *= more;
    motor.quadraticNms2 *= more;
  },
  'weak-rotor': ({ motor }, severity) => {
    motor.fluxVs *= 1 - 0.12 * severity;
  },
  'failing-servo-motor': ({ servo }, severity) => {
    const more = 1 / (1 - 0.4 * severity);
    servo.copperOhm *= more;
    servo.fixedOhm *= more;
  },
  'soft-rail': (car, severity) => {
    car.rail.droopOhm += severity * (0.14 - railSourceOhm(car));
  },
  'rail-current-limit': ({ rail }, severity) => {
    rail.limitA += severity * (1.5 - rail.limitA);
  },
  'dead-hall-line': ({ motor }, severity) => {
    motor.hallADead = severity > 0.5;
  },
  'open-thermistor': ({ sensor }, severity) => {
    sensor.open = severity > 0.5;
  },
  // At full stall torque a wholly loose block gives way at 100 degrees a second.
  'block-loose': ({ servo }, severity) => {
    const stallNm = servo.torqueNmPerA * servo.gear * stallA(servo, 25);
    servo.blockCreep = (severity * 1.75) / stallNm;
  },
};

export function spoil(car: CarParameters, faults: Faults): void {
  for (const [name, effect] of Object.entries(effects)) {
    const severity = severityOf(faults, name as FaultName);
    if (severity > 0) effect(car, severity);
  }
}
