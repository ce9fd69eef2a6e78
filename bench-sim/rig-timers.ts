// SPDX-License-Identifier: MIT
// Timers on a clock that somebody else advances: kept by due time, ties in the order they were set.
// It reads no clock of its own.
import type { Clock } from '#session/clock';

interface Timer {
  dueMs: number;
  readonly order: number;
  readonly everyMs: number | null;
  readonly act: () => void;
}

export class RigTimers implements Clock {
  private readonly timers = new Set<Timer>();
  private order = 0;

  constructor(
    private readonly read: () => number,
    private readonly onSet: () => void,
  ) {}

  now(): number {
    return this.read();
  }
  after(ms: number, act: () => void): () => void {
    return this.set(ms, null, act);
  }
  every(ms: number, act: () => void): () => void {
    return this.set(ms, ms, act);
  }

  nextMs(): number {
    let next = Number.POSITIVE_INFINITY;
    for (const timer of this.timers) if (timer.dueMs < next) next = timer.dueMs;
    return next;
  }

  /** A single timer (not a repeated one) is waiting. */
  get waiting(): boolean {
    for (const timer of this.timers) if (timer.everyMs === null) return true;
    return false;
  }

  /** Runs what is due by `nowMs`, earliest first. */
  fire(nowMs: number): void {
    for (let timer = this.firstDue(nowMs); timer !== null; timer = this.firstDue(nowMs)) {
      if (timer.everyMs === null) this.timers.delete(timer);
      else timer.dueMs += timer.everyMs;
      timer.act();
    }
  }

  private set(ms: number, everyMs: number | null, act: () => void): () => void {
    // A repeated timer of no length would never let time pass.
    const period = everyMs === null ? null : Math.max(everyMs, 1e-3);
    const timer: Timer = { dueMs: this.read() + Math.max(ms, 0), order: this.order++, everyMs: period, act };
    this.timers.add(timer);
    this.onSet();
    return () => {
      this.timers.delete(timer);
    };
  }

  private firstDue(nowMs: number): Timer | null {
    let first: Timer | null = null;
    for (const timer of this.timers) {
      if (timer.dueMs > nowMs) continue;
      const sooner = first === null || timer.dueMs < first.dueMs;
      if (sooner || (timer.dueMs === first?.dueMs && timer.order < first.order)) first = timer;
    }
    return first;
  }
}
