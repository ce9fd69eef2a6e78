// SPDX-License-Identifier: MIT
// A hand that turns the rotor: about a turn a second, never quite evenly. Some of the unevenness goes with the hand's
// own rhythm, a little comes back at the same place of every turn. It knows an angle, no Hall line.
import type { DriveMotor } from './drive-motor.ts';
import type { MotorParameters } from './parameters.ts';

const turn = 2 * Math.PI;
/** One turn a second; from memory. */
const usualRadS = turn;
/** Shares of the speed: two slow swings of the hand, and what stays at its place. From memory. */
const swings = [
  { share: 0.08, perTurn: 0.73 },
  { share: 0.06, perTurn: 0.31 },
] as const;
const heldShare = 0.02;

export class RotorHand {
  /** +1 the way the motor drives, -1 backwards, 0 hands off. */
  way: -1 | 0 | 1 = 0;
  /** Angle of the rotor since the hand took it, rad. */
  angleRad = 0;
  private timeS = 0;
  private speedRadS = 0;
  private readonly phaseRad: number;

  constructor(private readonly p: MotorParameters) {
    this.phaseRad = p.startAngleRad;
  }
  turn(way: -1 | 0 | 1): void {
    this.way = way;
    this.speedRadS = 0;
  }
  tick(tickS: number): void {
    if (this.way === 0) return;
    this.timeS += tickS;
    const along = (this.timeS * usualRadS) / turn;
    const uneven = swings.reduce(
      (sum, { share, perTurn }, k) =>
        sum + share * Math.sin(turn * along * perTurn + (k + 1) * this.phaseRad),
      heldShare * Math.sin(this.angleRad + this.phaseRad),
    );
    this.speedRadS = this.way * usualRadS * (1 + uneven);
  }
  /** The rotor goes where the hand goes; nothing drives it meanwhile. */
  step(motor: DriveMotor, stepS: number): void {
    const goneRad = this.speedRadS * stepS;
    this.angleRad += goneRad;
    motor.currentA = motor.busA = motor.speedRadS = 0;
    motor.turnedRad = this.p.polePairs * goneRad;
  }
}
