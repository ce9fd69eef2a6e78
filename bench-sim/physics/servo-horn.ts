// SPDX-License-Identifier: MIT
// The horn on the servo's spline and the protractor beside it: a person puts it on the tooth nearest to straight,
// so that up to half a tooth is left over. It knows angles, no motor.

export interface HornParameters {
  splineTeeth: number;
  /** 1: a longer pulse turns the horn clockwise, seen from above it; -1: the other way. */
  clockwise: 1 | -1;
  /** How far from straight the horn sits on its nearest tooth, clockwise. */
  seatRad: number;
  /** What the person reads wrong, reading by reading. */
  readErrorsRad: readonly number[];
}
const degrees = Math.PI / 180;

export class ServoHorn {
  private onAtRad = 0;
  private readings = 0;
  private readonly p: HornParameters;

  constructor(p: HornParameters) {
    this.p = p;
  }
  /** Put on, as straight as the teeth allow, while the shaft stands there. */
  putOn(shaftRad: number): void {
    this.onAtRad = shaftRad;
  }
  /** From straight, clockwise. */
  angleRad(shaftRad: number): number {
    return this.p.seatRad + this.p.clockwise * (shaftRad - this.onAtRad);
  }
  /** Degrees as the person reads them. */
  read(shaftRad: number): number {
    const { readErrorsRad } = this.p;
    const error = readErrorsRad[this.readings++ % readErrorsRad.length];
    return (this.angleRad(shaftRad) + error) / degrees;
  }
}
