// SPDX-License-Identifier: MIT
// From the pack's source to the controller's capacitor: leads, feed, taps, pack load, bleeder.
// L di/dt = u - i R - v_bus, C dv/dt = i - i_draw, v_bus = v + ESR (i - i_draw), solved together by the
// trapezoidal rule (A-stable; the poles lie at 13 to 60 us). The limited feed is quasi-static: its L/R is
// below 0.1 us. It knows no motor and no controller: what they draw comes in as a current.
import type { SupplyLineParameters } from './parameters.ts';

export type Feed = 'off' | 'limited' | 'full';

export class SupplyLine {
  /** Through the feed. */
  feedA = 0;
  /** Through the pack load. */
  loadA = 0;
  /** What a person has put into the pack load's circuit besides. */
  loadExtraOhm = 0;
  /** Through the shunt: feed and pack load. */
  packA = 0;
  packV = 0;
  controllerV = 0;
  busV: number;
  capacitorV: number;
  private readonly p: SupplyLineParameters;
  private readonly stepS: number;
  private readonly seriesOhm: number;
  private sharedOhm = 0;
  private share = 1;
  private gain = 0;
  private packLoadOn = false;
  private loadOhm = 0;
  private readonly astray: boolean;

  constructor(p: SupplyLineParameters, packOhm: number, stepS: number) {
    this.p = p;
    this.stepS = stepS;
    this.seriesOhm = packOhm + p.leadOhm;
    this.capacitorV = p.startV;
    this.busV = p.startV;
    this.astray = p.shortS > 0 || p.diodeS > 0;
    this.setPackLoad(false);
  }
  /** The pack load makes a divider of the source; what follows sees its Thevenin equivalent. */
  private setPackLoad(on: boolean): void {
    const { p, stepS } = this;
    this.packLoadOn = on;
    this.loadOhm = p.packLoadOhm + this.loadExtraOhm;
    this.share = on ? 1 / (1 + this.seriesOhm / this.loadOhm) : 1;
    this.sharedOhm = this.seriesOhm * this.share;
    const loopOhm = this.sharedOhm + p.feedOhm + p.postOhm + p.esrOhm + stepS / (2 * p.capacitanceF);
    this.gain = 1 / (2 + (stepS / p.inductanceH) * loopOhm);
  }
  step(sourceV: number, drawA: number, feed: Feed, packLoad: boolean, bleeder: boolean): void {
    if (packLoad !== this.packLoadOn) this.setPackLoad(packLoad);
    const leakA = this.capacitorV > 0 ? this.p.leakA + (this.astray ? this.astrayA() : 0) : 0;
    const draw = drawA + leakA + (bleeder ? this.controllerV / this.p.bleederOhm : 0);
    const sourceSeenV = sourceV * this.share;
    const meanA =
      feed === 'full'
        ? this.fullMeanA(sourceSeenV, draw)
        : feed === 'limited'
          ? this.limitedA(sourceSeenV, draw)
          : 0;
    this.feedA = feed === 'full' ? 2 * meanA - this.feedA : meanA;
    this.capacitorV += ((meanA - draw) * this.stepS) / this.p.capacitanceF;
    this.observe(sourceSeenV, draw);
  }
  /** Through a short, and through what lies the wrong way round. */
  private astrayA(): number {
    const { shortS, diodeV, diodeS } = this.p;
    return this.capacitorV * shortS + Math.max(0, this.capacitorV - diodeV) * diodeS;
  }
  private fullMeanA(sourceV: number, drawA: number): number {
    const { inductanceH, capacitanceF, esrOhm } = this.p;
    const bent = esrOhm + this.stepS / (2 * capacitanceF);
    const driveV = sourceV - this.capacitorV + bent * drawA;
    return (2 * this.feedA + (this.stepS / inductanceH) * driveV) * this.gain;
  }
  private limitedA(sourceV: number, drawA: number): number {
    const { limiterOhm, limiterDiodeV, postOhm, esrOhm } = this.p;
    const driveV = sourceV - limiterDiodeV - this.capacitorV + esrOhm * drawA;
    return Math.max(0, driveV / (this.sharedOhm + limiterOhm + postOhm + esrOhm));
  }
  private observe(sourceSeenV: number, drawA: number): void {
    this.packV = sourceSeenV - this.sharedOhm * this.feedA;
    this.loadA = this.packLoadOn ? this.packV / this.loadOhm : 0;
    this.packA = this.feedA + this.loadA;
    if (this.capacitorV < 0) this.capacitorV = 0;
    this.busV = this.capacitorV + this.p.esrOhm * (this.feedA - drawA);
    this.controllerV = this.busV + this.p.postOhm * this.feedA;
  }
}
