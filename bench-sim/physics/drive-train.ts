// SPDX-License-Identifier: MIT
// Pinion, spur and what turns with them while the wheels are off: inertia and drag at the motor's shaft. The drag goes
// with the place of the spur (a usual run-out, a tight place) and of the pinion. Coupled only once a person has meshed
// them; the spur counts from its paint dot at the top. It knows angles and torque, no motor.
import type { DriveParameters } from './parameters.ts';

const turn = 2 * Math.PI;
/** How sharp a tight place is: falls to half within 30 degrees on either side; from memory. */
const sharpness = 5;

/** Drag at the motor's shaft with the spur at an angle, the pinion's part left out. */
export function spurDragNm(p: DriveParameters, spurRad: number): number {
  const tight = p.tightNm === 0 ? 0 : p.tightNm * Math.exp(sharpness * (Math.cos(spurRad - p.tightRad) - 1));
  return p.frictionNm + p.runOutNm * Math.cos(spurRad - p.runOutRad) + tight;
}
export class DriveTrain {
  coupled = false;
  /** Of the motor's shaft since the dot stood at the top. */
  motorRad = 0;

  constructor(readonly p: DriveParameters) {}
  /** Meshed, wheels off, the paint dot at the top. */
  dotUp(): void {
    this.coupled = true;
    this.motorRad = 0;
  }
  get spurRad(): number {
    return (this.motorRad * this.p.pinionTeeth) / this.p.spurTeeth;
  }
  /** The shaft went on by an angle; gives the drag where it stands now. */
  turned(byRad: number): number {
    this.motorRad += byRad;
    const { p } = this;
    return spurDragNm(p, this.spurRad) + p.eccentricNm * Math.cos(this.motorRad - p.eccentricRad);
  }
}
/** Spur angle with the most drag, degrees past the dot; the greatest less the least drag, and the mean. */
export function spurDrags(p: DriveParameters) {
  const drags = Array.from({ length: 3600 }, (_, k) => spurDragNm(p, (k / 3600) * turn));
  const most = Math.max(...drags);
  return {
    tightDegrees: drags.indexOf(most) / 10,
    spanNm: most - Math.min(...drags),
    meanNm: drags.reduce((sum, drag) => sum + drag, 0) / drags.length,
  };
}
