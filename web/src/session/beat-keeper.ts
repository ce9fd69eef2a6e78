// SPDX-License-Identifier: MIT
// Beats every 20 ms while live, and only while whoever watches the run is able to stop it: `mayBeat` says so. A
// page that hangs makes it false, the beats stop, and the rig goes safe by itself. It decides nothing else.
import { wire } from '#protocol/codes';
import type { AnswerTo } from './command-queue.ts';
import type { Clock } from './clock.ts';
import type { RigClock } from './rig-clock.ts';
import type { RigLine } from './rig-line.ts';

/** Send times kept for answers on their way. */
const kept = 64;

export class BeatKeeper {
  sent = 0;
  answered = 0;
  /** Turns in which no beat was allowed. */
  withheld = 0;
  /** Longest time between two beats as the rig saw it, ms. */
  worstGapMs = 0;
  /** Number of the last scan seen; set by whoever sees scans. */
  lastScan = 0;
  private session = 0;
  private cancel: (() => void) | null = null;
  private readonly sentAtMs = new Map<number, number>();

  constructor(
    private readonly line: RigLine,
    private readonly clock: Clock,
    private readonly mayBeat: () => boolean,
    private readonly rigClock: RigClock,
  ) {}
  get beating(): boolean {
    return this.cancel !== null;
  }
  start(session: number): void {
    this.stop();
    this.session = session;
    this.cancel = this.clock.every(wire.beatMs, () => this.beat());
    this.beat();
  }
  stop(): void {
    this.cancel?.();
    this.cancel = null;
  }
  answer({ counter, tick, worstGap }: AnswerTo<'beatBack'>): void {
    this.answered++;
    this.worstGapMs = worstGap;
    const sentAt = this.sentAtMs.get(counter);
    if (sentAt === undefined) return;
    this.sentAtMs.delete(counter);
    this.rigClock.push(tick, sentAt, this.clock.now());
  }
  private beat(): void {
    if (!this.mayBeat()) {
      this.withheld++;
      return;
    }
    const counter = this.sent++ & 0xffff;
    this.sentAtMs.set(counter, this.clock.now());
    this.sentAtMs.delete((counter - kept) & 0xffff);
    // A line that is gone is told by the link itself.
    this.line.send({ type: 'beat', session: this.session, counter, lastScan: this.lastScan }).catch(() => {});
  }
}
