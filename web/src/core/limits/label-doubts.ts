// SPDX-License-Identifier: MIT
// What looks wrong on a label that is whole by itself: figures that don't fit each other or the part's class, as
// after a slip of the unit or of a digit. Hints for the person who typed it; nothing is refused and no limit changes.
import type { Car, Motor, Servo } from '../parts/part.ts';
import { rowOf } from './class-default.ts';
import { servoClasses } from './class-data.ts';
import { electricalFloorA, stallRating } from './servo-ratings.ts';

/** A figure farther from its class than this is hinted at: classes are wide and from memory. */
const farFromClass = 1.6;

export const labelDoubts = (car: Car): string[] => [...motorDoubts(car), ...servoDoubts(car.servo)];

function motorDoubts(car: Car): string[] {
  const { ratedKvRpmPerV, ratedNoLoadA, turns } = car.motor;
  return [
    far(
      'motor.ratedKvRpmPerV',
      'kV',
      ratedKvRpmPerV,
      rowOf('motor-no-load/kv', car)?.typical,
      'rpm/V',
      `${turns} turns`,
    ),
    far(
      'motor.ratedNoLoadA',
      'No-load current',
      ratedNoLoadA,
      rowOf('motor-no-load/no-load-current', car)?.typical,
      'A',
      `${turns} turns`,
    ),
    speedDoubt(car.motor),
  ].filter((words) => words !== null);
}
function far(
  path: string,
  name: string,
  value: number | undefined,
  usual: readonly number[] | undefined,
  unit: string,
  partClass: string,
): string | null {
  if (value === undefined || !usual) return null;
  if (value < usual[1] * farFromClass && value > usual[0] / farFromClass) return null;
  const range = usual.map((each) => Number(each.toPrecision(3))).join(' to ');
  return `${path}: ${name} of ${value} ${unit} is unusual: ${partClass} has ${range} ${unit} (from memory). Is it a slip of a digit or of the unit?`;
}
/** On two cells a motor turns at about kV times 7.4 V; a label's greatest speed below half of that fits neither. */
function speedDoubt({ ratedKvRpmPerV, ratedSpeedRpm }: Motor): string | null {
  if (ratedSpeedRpm >= ratedKvRpmPerV * 7.4 * 0.5) return null;
  return `motor.ratedSpeedRpm: ${ratedSpeedRpm} rpm is less than half of what ${ratedKvRpmPerV} rpm/V give at 7.4 V. A digit missing?`;
}
function servoDoubts(servo: Servo): string[] {
  const usual = servo.size && servoClasses[servo.size];
  const partClass = `a ${servo.size} servo at 7.4 V`;
  return [
    far('servo.ratedTorqueNm', 'Torque', servo.ratedTorqueNm, usual?.torqueNm, 'N.m', partClass),
    far(
      'servo.ratedSecondsPer60',
      'Time',
      servo.ratedSecondsPer60,
      usual?.secondsPer60,
      's per 60 degrees',
      partClass,
    ),
    floorDoubt(servo),
  ].filter((words) => words !== null);
}
function floorDoubt(servo: Servo): string | null {
  const floorA = electricalFloorA(servo);
  const stall = stallRating(servo, servo.ratedVoltageV);
  if (floorA === undefined || 'unusable' in stall || stall.value >= floorA) return null;
  return `servo.ratedStallA: a servo of that torque and time draws at least ${floorA.toFixed(1)} A when stalled, its label says ${stall.value.toFixed(1)} A. One of the three is not right; torque is in N.m, time in seconds per 60 degrees.`;
}
