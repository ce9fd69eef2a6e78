// SPDX-License-Identifier: MIT
// What the faults of motor, sensors and drive train do to a healthy car's numbers. Severity 0 leaves every number as it was.
import type { Effects } from './fault-effects.ts';
import { ratedTimingDegrees, setTiming } from './motor-timing.ts';

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
  'hot-motor': ({ motor }, severity) => {
    motor.startAboveAirK = 30 * severity;
  },
  'advanced-timing': ({ motor }, severity) => {
    setTiming(motor, ratedTimingDegrees + 20 * severity);
  },
  'drag-brake-left-on': ({ controller }, severity) => {
    controller.dragBrake = 0.4 * severity;
  },
  'dead-hall-line': ({ motor }, severity) => {
    motor.deadHallLines[0] = severity > 0.5;
  },
  'dead-hall-line-b': ({ motor }, severity) => {
    motor.deadHallLines[1] = severity > 0.5;
  },
  'dead-hall-line-c': ({ motor }, severity) => {
    motor.deadHallLines[2] = severity > 0.5;
  },
  'swapped-hall-lines': ({ motor }, severity) => {
    motor.hallLinesSwapped = severity > 0.5;
  },
  'noisy-hall-line': ({ motor }, severity) => {
    motor.hallNoiseHz = 10 * severity;
  },
  'uneven-hall-duty': ({ motor }, severity) => {
    motor.hallDuty[1] += 0.15 * severity;
  },
  'loose-sensor-plug': ({ motor }, severity) => {
    motor.hallLooseHz = 8 * severity;
  },
  'thermistor-short': ({ sensor }, severity) => {
    sensor.motorShorted = severity > 0.5;
  },
  'thermistor-loose': ({ sensor }, severity) => {
    sensor.motorLooseHz = 4 * severity;
  },
  'open-thermistor': ({ sensor }, severity) => {
    sensor.open = severity > 0.5;
  },
  'tight-mesh': ({ motor, drive }, severity) => {
    drive.tightNm = 0.6 * severity * (motor.coulombNm + drive.frictionNm);
  },
  'eccentric-pinion': ({ motor, drive }, severity) => {
    drive.eccentricNm += 0.3 * severity * (motor.coulombNm + drive.frictionNm);
  },
};
