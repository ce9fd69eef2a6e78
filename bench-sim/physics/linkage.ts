// SPDX-License-Identifier: MIT
// What a servo's horn moves in a car: a linkage with its own stops, its friction, and the tyres' scrub where they
// stand on the ground. Stops are damped springs; friction and scrub twist up like a spring and then slide. A horn
// that does not hold on its spline turns on it above some torque. It knows the horn's angle, no motor.
import type { LinkageParameters } from './parameters.ts';

/** Off the horn; on it with the wheels off, hanging, pressed down; on its tyres, suspension at ride height. */
export type Hitched = 'off' | 'bare' | 'droop' | 'compression' | 'tyres';
/** How fast a horn turns on its spline, rad/s per N m above what it holds. */
const slipRate = 40;

export class Linkage {
  /** Ways it has been hitched so far: what an end point is the tightest of. */
  readonly seen = new Set<Hitched>();
  /** Seconds that the linkage was pressed against a stop. */
  pressedS = 0;
  /** How far the horn has turned on its spline. */
  slippedRad = 0;
  private hitched: Hitched = 'off';
  private longRad = Infinity;
  private shortRad = Infinity;
  private twistRad = 0;
  private mostTwistRad = 0;
  private dragNm = 0;
  private atRad = 0;
  private readonly p: LinkageParameters;
  private readonly stepS: number;

  constructor(p: LinkageParameters, stepS: number) {
    this.p = p;
    this.stepS = stepS;
  }
  get on(): boolean {
    return this.hitched !== 'off';
  }
  get onTyres(): boolean {
    return this.hitched === 'tyres';
  }
  hitch(how: Hitched, hornRad: number): void {
    const { frictionNm, frictionTwistRad, scrubNm, scrubTwistRad } = this.p;
    const tyres = how === 'tyres';
    this.hitched = how;
    this.seen.add(how);
    this.longRad = stopRad(this.p, how, 'long');
    this.shortRad = stopRad(this.p, how, 'short');
    this.dragNm = frictionNm + (tyres ? scrubNm : 0);
    this.mostTwistRad = tyres ? scrubTwistRad : frictionTwistRad;
    this.twistRad = 0;
    this.atRad = hornRad - this.slippedRad;
  }
  /** Torque at the horn, positive against positive motion. */
  loadNm(hornRad: number, hornRadS: number): number {
    const atRad = hornRad - this.slippedRad;
    const twistRad = this.twistRad + atRad - this.atRad;
    this.twistRad = Math.max(-this.mostTwistRad, Math.min(this.mostTwistRad, twistRad));
    this.atRad = atRad;
    return this.held(this.stopNm(atRad, hornRadS) + (this.dragNm * this.twistRad) / this.mostTwistRad);
  }
  private stopNm(atRad: number, hornRadS: number): number {
    const past = atRad > this.longRad ? atRad - this.longRad : Math.min(0, atRad + this.shortRad);
    if (past === 0) return 0;
    this.pressedS += this.stepS;
    const forceNm = past * this.p.stiffnessNmPerRad + hornRadS * this.p.dampingNms;
    return past > 0 ? Math.max(0, forceNm) : Math.min(0, forceNm);
  }
  private held(loadNm: number): number {
    const beyondNm = Math.abs(loadNm) - this.p.holdsNm;
    if (beyondNm <= 0) return loadNm;
    this.slippedRad += Math.sign(loadNm) * beyondNm * slipRate * this.stepS;
    return Math.sign(loadNm) * this.p.holdsNm;
  }
}
/** Where the linkage stops on one side, rad from centre, as it is hitched. */
export function stopRad(p: LinkageParameters, how: Hitched, side: 'short' | 'long'): number {
  const bareRad = side === 'short' ? p.shortRad : p.longRad;
  if (how === 'droop') return bareRad - p.droopRad;
  return how === 'compression' || how === 'tyres' ? bareRad - p.compressionRad : bareRad;
}
