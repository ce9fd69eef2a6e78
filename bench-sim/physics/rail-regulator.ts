// SPDX-License-Identifier: MIT
// The controller's own regulator and the receiver rail: a current-commanded regulator (integral plus
// proportional voltage loop over a first-order current loop), output capacitor with ESR, droop, wiring,
// current limit, drop-out. C dv/dt = iL - i, tau diL/dt = ic - iL. Solved in sub-steps with the current loop
// exact. It knows loads only as a conductance (the load bank) and a current (the servo).
import type { RailParameters } from './parameters.ts';
import { standbyA } from './steady-state.ts';

const subSteps = 3;

export class RailRegulator {
  on = false;
  /** At the receiver. */
  receiverV = 0;
  /** All that leaves the regulator. */
  loadA = 0;
  inductorA = 0;
  capacitorV = 0;
  private integralA = 0;
  private referenceV = 0;
  private readonly p: RailParameters;
  private readonly stepS: number;
  private readonly proportional: number;
  private readonly integral: number;
  private readonly follow: number;

  constructor(p: RailParameters, stepS: number) {
    this.p = p;
    this.stepS = stepS / subSteps;
    this.proportional = 2 * Math.PI * p.loopHz * p.capacitanceF;
    this.integral = (this.stepS * this.proportional * 2 * Math.PI * p.loopHz) / 5;
    this.follow = 1 - Math.exp(-this.stepS / p.currentLoopS);
  }
  /** The reference rises over 10 ms when the controller wakes. */
  tick(on: boolean, tickS: number): void {
    this.on = on;
    this.referenceV = on ? Math.min(this.p.settingV, this.referenceV + (this.p.settingV * tickS) / 0.01) : 0;
    if (!on) this.integralA = 0;
  }
  step(busV: number, bankS: number, servoA: number): void {
    const { p } = this;
    const drawA = servoA + standbyA(p, this.receiverV);
    const behindOhm = p.esrOhm + p.wiringOhm;
    const divide = 1 / (1 + behindOhm * bankS);
    const highestA = this.on ? Math.max(0, Math.min(p.limitA, (busV - this.capacitorV) / p.dropOutOhm)) : 0;
    for (let k = 0; k < subSteps; k++) {
      const receiverV = (this.capacitorV + p.esrOhm * this.inductorA - behindOhm * drawA) * divide;
      this.loadA = bankS * receiverV + drawA;
      this.regulate(highestA);
      this.capacitorV += ((this.inductorA - this.loadA) * this.stepS) / p.capacitanceF;
    }
    if (this.capacitorV < 0) this.capacitorV = 0;
    const nowV = (this.capacitorV + p.esrOhm * this.inductorA - behindOhm * drawA) * divide;
    this.receiverV = nowV > 0 ? nowV : 0;
  }
  private regulate(highestA: number): void {
    const errorV = this.referenceV - this.p.droopOhm * this.loadA - this.capacitorV;
    const wantedA = this.integralA + this.proportional * errorV;
    let commandA = wantedA;
    if (wantedA < 0) commandA = 0;
    else if (wantedA > highestA) commandA = highestA;
    else this.integralA += this.integral * errorV;
    this.inductorA += (commandA - this.inductorA) * this.follow;
  }
  /** What the regulator draws from the bus. */
  inputA(busV: number): number {
    if (busV < 1) return 0;
    return (this.capacitorV * this.inductorA) / (this.p.efficiency * busV);
  }
}
