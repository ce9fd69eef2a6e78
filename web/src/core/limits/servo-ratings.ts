// SPDX-License-Identifier: MIT
// What a servo's label says, as ratings at their voltages, and the least current it can stall with by what it says.
// It knows the label and the scaling model, no check and no limit.
import type { Servo } from '../parts/part.ts';
import type { Unusable } from './precedence.ts';
import { scaledRating, scaledTime, type RatingAt, type Scaled } from './rating-scaling.ts';

type Rated = 'stallA' | 'torqueNm' | 'secondsPer60';
/** The label's columns for one quantity: the first, and the second where the label has one. */
export function ratingsOf(servo: Servo, rated: Rated): readonly RatingAt[] {
  const { ratedStallA, ratedStallAtV, ratedTorqueNm, ratedSecondsPer60, ratedVoltageV, secondRating } = servo;
  const first = { stallA: ratedStallA, torqueNm: ratedTorqueNm, secondsPer60: ratedSecondsPer60 }[rated];
  const firstAtV = rated === 'stallA' ? (ratedStallAtV ?? ratedVoltageV) : ratedVoltageV;
  const second = secondRating?.[rated];
  return [
    ...(first === undefined ? [] : [{ value: first, atV: firstAtV }]),
    ...(second === undefined || !secondRating ? [] : [{ value: second, atV: secondRating.voltageV }]),
  ];
}
export const stallRating = (servo: Servo, toV: number): Scaled | Unusable =>
  scaledRating('current', ratingsOf(servo, 'stallA'), toV);
export const torqueRating = (servo: Servo, toV: number): Scaled | Unusable =>
  scaledRating('torque', ratingsOf(servo, 'torqueNm'), toV);
export const timeRating = (servo: Servo, toV: number): Scaled | Unusable =>
  scaledTime(ratingsOf(servo, 'secondsPer60'), toV);

/** Torque times no-load speed over voltage: with no loss at all a stalled motor draws that much, never less.
 *  A motor's stall torque is k I and its no-load speed at most V/k, so T w0 is at most V I (any gear falls out). */
export function electricalFloorA(servo: Servo): number | undefined {
  const torque = torqueRating(servo, servo.ratedVoltageV);
  const time = timeRating(servo, servo.ratedVoltageV);
  if ('unusable' in torque || 'unusable' in time) return undefined;
  return (torque.value * (Math.PI / 3)) / time.value / servo.ratedVoltageV;
}
