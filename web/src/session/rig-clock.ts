// SPDX-License-Identifier: MIT
// How long a second of the rig is on the host's clock. Each answered beat says: this tick lay between these two
// host times. Two of them bound the ratio for certain, whatever the link's delays were; all of them together
// bound it tighter. The host's crystal is taken as good to 100 ppm (from memory).
import type { ClockFit } from '#core/samples/sample-store';
import { TickCount } from './tick-count.ts';

const hostTolerance = 1e-4;
/** Readings of the first two seconds compete to be the anchor; the narrowest wins. */
const anchorMs = 2000;

interface Bracket {
  readonly tick: number;
  readonly fromMs: number;
  readonly toMs: number;
}
export class RigClock {
  private readonly count = new TickCount();
  private anchor: Bracket | null = null;
  private readonly first: Bracket[] = [];
  private low = 0;
  private high = Number.POSITIVE_INFINITY;

  constructor(
    private readonly tickS: number,
    private readonly declared: number,
  ) {}
  /** `tick` was read by the rig between the two host times. */
  push(tick: number, fromMs: number, toMs: number): void {
    const bracket = { tick: this.count.unwrap(tick), fromMs, toMs };
    const isEarly = this.first.length === 0 || fromMs - this.first[0].fromMs < anchorMs;
    if (isEarly) this.first.push(bracket);
    if (isEarly && (!this.anchor || width(bracket) < width(this.anchor))) this.settle(bracket);
    else this.bound(bracket);
  }
  /** Host seconds per rig second; the descriptor's tolerance until the fit is better. */
  get fit(): ClockFit {
    const halfWidth = (this.high - this.low) / 2 + hostTolerance;
    const usable = halfWidth > 0 && halfWidth < this.declared;
    if (!usable) return { ratio: 1, halfWidth: this.declared, origin: 'descriptor' };
    return { ratio: (this.high + this.low) / 2, halfWidth, origin: 'fit' };
  }
  private settle(bracket: Bracket): void {
    this.anchor = bracket;
    this.low = 0;
    this.high = Number.POSITIVE_INFINITY;
    for (const other of this.first) if (other !== bracket) this.bound(other);
  }
  private bound(bracket: Bracket): void {
    const anchor = this.anchor as Bracket;
    const [early, late] = bracket.tick < anchor.tick ? [bracket, anchor] : [anchor, bracket];
    const rigMs = (late.tick - early.tick) * this.tickS * 1000;
    if (rigMs <= 0) return;
    this.low = Math.max(this.low, (late.fromMs - early.toMs) / rigMs);
    this.high = Math.min(this.high, (late.toMs - early.fromMs) / rigMs);
  }
}
const width = ({ fromMs, toMs }: Bracket): number => toMs - fromMs;
