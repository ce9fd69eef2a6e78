// SPDX-License-Identifier: MIT
// The motor behind its controller's half bridges, averaged over a PWM period:
// L di/dt = v_m - i R - Ke w and J dw/dt = Ke i - a - b w - c w^2. It turns one way only; while coasting the
// bridge is open, while braking the winding boosts into the bus: v_m = (1 - Db)(v_bus + 1) with i < 0. Where that is
// above Ke w the current falls to zero within each period of the PWM, and its mean is that of a boost converter with
// gaps: i = E Db^2 Vo/(2 L f (Vo - E)), E = Ke w, Vo = v_bus + 1 (textbook, from memory).
import type { MotorParameters } from './parameters.ts';

const diodeV = 0.7;

export class DriveMotor {
  /** Motor current, positive when it drives. */
  currentA = 0;
  speedRadS = 0;
  /** Mean of the last step, at the bus. */
  busA = 0;
  /** Electrical angle gone in the last step. */
  turnedRad = 0;
  /** Copper and friction heat since they were last taken. */
  copperJ = 0;
  frictionJ = 0;
  windingOhm: number;
  fluxVs: number;
  /** What hangs on the shaft: torque against it, and inertia. */
  loadNm = 0;
  addedKgM2 = 0;
  private readonly p: MotorParameters;
  private readonly driverOhm: number;
  private readonly stepS: number;
  private readonly pwmHz: number;

  constructor(p: MotorParameters, driverOhm: number, stepS: number, pwmHz = Number.POSITIVE_INFINITY) {
    this.p = p;
    this.pwmHz = pwmHz;
    this.driverOhm = driverOhm;
    this.stepS = stepS;
    this.windingOhm = p.windingOhm;
    this.fluxVs = p.fluxVs;
  }
  lossNm(speedRadS: number): number {
    return this.p.coulombNm + (this.p.viscousNms + this.p.quadraticNms2 * speedRadS) * speedRadS;
  }
  step(duty: number, brake: number, busV: number): void {
    const beforeA = this.currentA;
    if (duty > 0) this.currentA = Math.max(0, this.nextA(duty * busV));
    else if (brake > 0)
      this.currentA = Math.min(this.gappedA(brake, busV + 1), this.nextA((1 - brake) * (busV + 1)));
    else
      this.currentA = beforeA > 0 ? Math.max(0, this.nextA(-diodeV)) : Math.min(0, this.nextA(busV + diodeV));
    const meanA = (beforeA + this.currentA) / 2;
    this.busA =
      duty > 0 ? duty * meanA : brake > 0 ? this.boosted(brake, busV + 1) * meanA : Math.min(0, meanA);
    this.turn(meanA);
  }
  /** Mean braking current with gaps, 0 or less; 0 where there are none. */
  private gappedA(brake: number, outV: number): number {
    const sourceV = this.fluxVs * this.speedRadS;
    if (sourceV >= (1 - brake) * outV) return 0;
    return -(sourceV * brake ** 2 * outV) / (2 * this.p.inductanceH * this.pwmHz * (outV - sourceV));
  }
  /** Share of the winding's current that reaches the bus. */
  private boosted(brake: number, outV: number): number {
    return Math.min(1 - brake, (this.fluxVs * this.speedRadS) / outV);
  }
  private nextA(voltV: number): number {
    const half = (this.stepS * (this.windingOhm + this.driverOhm)) / (2 * this.p.inductanceH);
    const pushV = voltV - this.fluxVs * this.speedRadS;
    return (this.currentA * (1 - half) + (this.stepS / this.p.inductanceH) * pushV) / (1 + half);
  }
  private turn(meanA: number): void {
    const before = this.speedRadS;
    const torqueNm = this.fluxVs * meanA;
    if (before === 0 && torqueNm <= this.p.coulombNm + this.loadNm) {
      this.turnedRad = 0;
      this.copperJ += meanA * meanA * this.windingOhm * this.stepS;
      return;
    }
    const lossNm = this.lossNm(before);
    const pushNm = torqueNm - lossNm - this.loadNm;
    this.speedRadS = Math.max(0, before + (pushNm * this.stepS) / (this.p.inertiaKgM2 + this.addedKgM2));
    const meanRadS = (before + this.speedRadS) / 2;
    this.turnedRad = this.p.polePairs * meanRadS * this.stepS;
    this.copperJ += meanA * meanA * this.windingOhm * this.stepS;
    this.frictionJ += lossNm * meanRadS * this.stepS;
  }
}
