// SPDX-License-Identifier: MIT
// Heat as lumped nodes: C dT/dt = P - (T - T_next)/R, and a thermistor that follows its body late and not all
// the way. It knows joules and kelvins, not where they come from.

/** Inner body (winding), outer body (can, case), air. */
export class TwoBodyHeat {
  innerC: number;
  outerC: number;
  private readonly p: TwoBodyParameters;

  constructor(p: TwoBodyParameters, startC: number) {
    this.p = p;
    this.innerC = startC;
    this.outerC = startC;
  }
  step(innerJ: number, outerJ: number, airC: number, stepS: number): void {
    const acrossJ = ((this.innerC - this.outerC) / this.p.betweenKPerW) * stepS;
    const lostJ = ((this.outerC - airC) / this.p.toAirKPerW) * stepS;
    this.innerC += (innerJ - acrossJ) / this.p.innerJPerK;
    this.outerC += (outerJ + acrossJ - lostJ) / this.p.outerJPerK;
  }
}
export interface TwoBodyParameters {
  readonly innerJPerK: number;
  readonly betweenKPerW: number;
  readonly outerJPerK: number;
  readonly toAirKPerW: number;
}
export class OneBodyHeat {
  bodyC: number;
  private readonly joulePerK: number;
  private readonly toAirKPerW: number;

  constructor(joulePerK: number, toAirKPerW: number, startC: number) {
    this.joulePerK = joulePerK;
    this.toAirKPerW = toAirKPerW;
    this.bodyC = startC;
  }
  step(addedJ: number, airC: number, stepS: number): void {
    this.bodyC += (addedJ - ((this.bodyC - airC) / this.toAirKPerW) * stepS) / this.joulePerK;
  }
}
/** dT/dt = (air + gain (body - air) - T)/lag. */
export class Thermistor {
  celsius: number;
  private readonly lagS: number;
  private readonly gain: number;

  constructor(lagS: number, gain: number, startC: number) {
    this.lagS = lagS;
    this.gain = gain;
    this.celsius = startC;
  }
  step(bodyC: number, airC: number, stepS: number): void {
    const finalC = airC + this.gain * (bodyC - airC);
    this.celsius += ((finalC - this.celsius) * stepS) / this.lagS;
  }
}
