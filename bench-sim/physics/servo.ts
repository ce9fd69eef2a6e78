// SPDX-License-Identifier: MIT
// A steering servo: small motor, gear, sampled position loop, stops, and the block a person may put at its
// horn. L di/dt = u v - i R - Ke w, J dw/dt = Ke i - friction - T/N, stops and block as stiff springs with
// damping. The bridge returns nothing to the rail. It knows its plug's voltage and its pulse, no rail.
import { copperFactor } from './copper.ts';
import { Linkage } from './linkage.ts';
import type { ServoParameters } from './parameters.ts';
import { ServoHorn } from './servo-horn.ts';
import { servoAwakeV } from './steady-state.ts';

const stillRadS = 0.5;
const degrees = Math.PI / 180;
/** How far a tight spot reaches either side, and how far along the track its worn centre is felt. */
const tightReachRad = 3 * degrees;
const wornReachRad = 6 * degrees;
/** Where the worn centre lies, as a pulse: most of a servo's life is spent there (common practice, no source). */
const wornAtPulseS = 1.5e-3;
/** A bounce off the block and back within this time belongs to the push before. */
const sameBoutS = 1;

export class Servo {
  currentA = 0;
  speedRadS = 0;
  /** Horn angle from centre; positive with longer pulses. */
  hornRad: number;
  /** What the plug draws, its electronics included. */
  plugA = 0;
  /** Heat since last taken: in the winding's copper, and in all else. */
  copperJ = 0;
  otherJ = 0;
  windingOhm: number;
  /** Where the block stands, or null without one. */
  blockRad: number | null = null;
  /** Winding temperature when the bridge last went fully on against the block after a rest. */
  pushStartC: number | null = null;
  readonly linkage: Linkage;
  readonly horn: ServoHorn;
  /** What the plug drew since the start, and the same of its square. */
  chargeC = 0;
  squareA2s = 0;
  private drive = 0;
  private wantedDrive = 0;
  private targetRad: number;
  private sinceLoopS = 0;
  private sinceFullS = Infinity;
  private readonly p: ServoParameters;
  private readonly stepS: number;

  constructor(p: ServoParameters, stepS: number) {
    this.p = p;
    this.stepS = stepS;
    this.hornRad = p.startRad;
    this.targetRad = p.startRad;
    this.windingOhm = p.copperOhm;
    this.linkage = new Linkage(p.linkage, stepS);
    this.horn = new ServoHorn(p.horn);
  }
  get totalOhm(): number {
    return this.windingOhm + this.p.fixedOhm;
  }
  /** The horn is laid against a block where it is. */
  block(): void {
    this.blockRad = this.hornRad;
  }
  free(): void {
    this.blockRad = null;
  }
  setTemperature(windingC: number): void {
    this.windingOhm = this.p.copperOhm * copperFactor(windingC);
  }
  step(plugV: number, pulseS: number | null, windingC: number): void {
    this.sinceLoopS += this.stepS;
    if (this.sinceLoopS >= this.p.loopS) this.loop(pulseS, windingC);
    if (plugV < servoAwakeV) this.wantedDrive = 0;
    this.slew();
    if (this.drive === 0 && this.currentA === 0 && this.speedRadS === 0) this.rest(plugV);
    else this.move(plugV);
    this.chargeC += this.plugA * this.stepS;
    this.squareA2s += this.plugA * this.plugA * this.stepS;
  }
  private rest(plugV: number): void {
    this.plugA = plugV > servoAwakeV ? this.p.electronicsA : 0;
    this.turn(0);
  }
  private loop(pulseS: number | null, windingC: number): void {
    this.sinceLoopS -= this.p.loopS;
    if (pulseS !== null) this.targetRad = (pulseS - this.p.centreS) * this.p.radPerS;
    const errorRad = pulseS === null && !this.p.digital ? 0 : this.targetRad - this.fedBackRad();
    const asked = Math.max(-1, Math.min(1, errorRad / this.p.bandRad));
    this.wantedDrive = Math.abs(errorRad) < this.p.deadBandRad ? 0 : asked;
    this.watchPush(windingC);
  }
  /** What the feedback track says of the horn. */
  private fedBackRad(): number {
    const { wornJumpRad, centreS, radPerS } = this.p;
    if (wornJumpRad === 0) return this.hornRad;
    const fromWornRad = this.hornRad - (wornAtPulseS - centreS) * radPerS;
    const felt = Math.exp(-Math.abs(fromWornRad) / wornReachRad);
    return this.hornRad + Math.sign(fromWornRad) * wornJumpRad * felt;
  }
  private watchPush(windingC: number): void {
    this.sinceFullS += this.p.loopS;
    if (this.wantedDrive < 0.95) return;
    if (this.sinceFullS > sameBoutS && this.atBlock) this.pushStartC = windingC;
    this.sinceFullS = 0;
  }
  /** Swinging back from beyond its place is full drive as well, but no push. */
  private get atBlock(): boolean {
    return this.blockRad !== null && this.hornRad > this.blockRad - 0.3 * this.p.bandRad;
  }
  private slew(): void {
    if (this.p.softStartS === 0) {
      this.drive = this.wantedDrive;
      return;
    }
    const slew = this.stepS / this.p.softStartS;
    const grow = Math.max(-slew, Math.min(slew, this.wantedDrive - this.drive));
    this.drive = Math.abs(this.wantedDrive) < Math.abs(this.drive) ? this.wantedDrive : this.drive + grow;
  }
  private move(plugV: number): void {
    const { inductanceH, torqueNmPerA, electronicsA } = this.p;
    const before = this.currentA;
    const half = (this.stepS * this.totalOhm) / (2 * inductanceH);
    const pushV = this.drive * plugV - torqueNmPerA * this.speedRadS;
    this.currentA = (before * (1 - half) + (this.stepS / inductanceH) * pushV) / (1 + half);
    const duty = this.chop(plugV);
    const meanA = (before + this.currentA) / 2;
    const heat = meanA * meanA * this.stepS;
    this.copperJ += heat * this.windingOhm;
    this.otherJ += heat * this.p.fixedOhm;
    this.plugA = Math.max(0, duty * meanA) + (plugV > servoAwakeV ? electronicsA : 0);
    this.turn(meanA);
  }
  /** The electronic current limit; returns the duty that the bridge is left with. */
  private chop(plugV: number): number {
    const limit = this.p.currentLimitA;
    if (limit === 0 || Math.abs(this.currentA) <= limit) return this.drive;
    this.currentA = Math.sign(this.currentA) * limit;
    return (this.currentA * this.totalOhm + this.p.torqueNmPerA * this.speedRadS) / Math.max(1, plugV);
  }
  private turn(meanA: number): void {
    const { p, stepS } = this;
    const torqueNm = p.torqueNmPerA * meanA - this.hornLoadNm() / p.gear;
    const dryNm = p.tightNm === 0 ? p.coulombNm : p.coulombNm + this.tightNm();
    const frictionNm = dryNm + p.viscousNms * Math.abs(this.speedRadS);
    const slow = Math.abs(this.speedRadS) < stillRadS;
    if (slow && Math.abs(torqueNm) < dryNm) {
      this.speedRadS = 0;
      return;
    }
    const direction = Math.sign(slow ? torqueNm : this.speedRadS);
    const before = this.speedRadS;
    this.speedRadS = before + ((torqueNm - direction * frictionNm) * stepS) / p.inertiaKgM2;
    this.hornRad += ((before + this.speedRadS) * stepS) / (2 * p.gear);
  }
  private tightNm(): number {
    const away = (this.hornRad - this.p.tightAtRad) / tightReachRad;
    return this.p.tightNm * Math.exp(-away * away);
  }
  /** Torque of linkage, stops and block at the horn, positive against positive motion. */
  private hornLoadNm(): number {
    let load = this.linkage.on ? this.linkage.loadNm(this.hornRad, this.speedRadS / this.p.gear) : 0;
    if (this.hornRad > this.p.stopRad) load += this.springNm(this.hornRad - this.p.stopRad);
    if (this.hornRad < -this.p.stopRad) load += this.springNm(this.hornRad + this.p.stopRad);
    if (this.blockRad !== null && this.hornRad > this.blockRad) load += this.blockNm(this.blockRad);
    return load;
  }
  private springNm(pressedRad: number): number {
    const dampedNm = (this.p.dampingNms * this.speedRadS) / this.p.gear;
    const forceNm = pressedRad * this.p.stiffnessNmPerRad + dampedNm;
    return pressedRad > 0 ? Math.max(0, forceNm) : Math.min(0, forceNm);
  }
  private blockNm(blockRad: number): number {
    const forceNm = this.springNm(this.hornRad - blockRad);
    this.blockRad = blockRad + this.p.blockCreep * forceNm * this.stepS;
    return forceNm;
  }
}
