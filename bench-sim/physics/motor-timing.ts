// SPDX-License-Identifier: MIT
// What turning the end bell does: advance weakens the flux that the winding sees, so the motor turns faster, and costs
// loss that grows ever faster. A simple stated model, from memory:
//   speed per volt x (1 + 0.006 x - 0.00006 x^2), drag torque x (1 + 0.008 x + 0.0011 x^2), x = degrees beyond 30.
import type { MotorParameters } from './parameters.ts';

/** Labels hold here; from memory. */
export const ratedTimingDegrees = 30;
/** Marks of the end bell, degrees. */
export const endBellMarks = [20, 30, 40, 50] as const;
const degree = Math.PI / 180;

const speedFactor = (x: number): number => 1 + 0.006 * x - 0.00006 * x * x;
const dragFactor = (x: number): number => 1 + 0.008 * x + 0.0011 * x * x;

export function setTiming(motor: MotorParameters, degrees: number): void {
  const [from, to] = [motor.timingDegrees, degrees].map((at) => at - ratedTimingDegrees);
  const drag = dragFactor(to) / dragFactor(from);
  motor.fluxVs *= speedFactor(from) / speedFactor(to);
  motor.coulombNm *= drag;
  motor.viscousNms *= drag;
  motor.quadraticNms2 *= drag;
  motor.hallOffsetRad += (to - from) * degree;
  motor.timingDegrees = degrees;
}
