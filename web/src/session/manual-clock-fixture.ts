// SPDX-License-Identifier: MIT
// For tests: a clock that only moves when told, and lets every ready promise run between two timers.
import type { Clock } from './clock.ts';

interface Timer {
  dueMs: number;
  readonly everyMs: number | null;
  readonly act: () => void;
}
/** Enough turns for any chain of awaits in the session. */
const turns = 60;
export async function letPromisesRun(): Promise<void> {
  for (let turn = 0; turn < turns; turn++) await Promise.resolve();
}
export class ManualClock implements Clock {
  private nowMs = 0;
  private readonly timers = new Set<Timer>();

  now(): number {
    return this.nowMs;
  }
  after(ms: number, act: () => void): () => void {
    return this.set(ms, null, act);
  }
  every(ms: number, act: () => void): () => void {
    return this.set(ms, ms, act);
  }
  get pending(): number {
    return this.timers.size;
  }
  async advance(ms: number): Promise<void> {
    const untilMs = this.nowMs + ms;
    await letPromisesRun();
    for (let timer = this.next(untilMs); timer; timer = this.next(untilMs)) {
      this.nowMs = timer.dueMs;
      if (timer.everyMs === null) this.timers.delete(timer);
      else timer.dueMs += timer.everyMs;
      timer.act();
      await letPromisesRun();
    }
    this.nowMs = untilMs;
  }
  /** Advances until the promise settles; fails the test when it does not within `limitMs`. */
  async settle<T>(work: Promise<T>, limitMs = 60_000): Promise<T> {
    let settled = false;
    const mark = () => {
      settled = true;
    };
    work.then(mark, mark);
    for (let spent = 0; !settled && spent < limitMs; spent += 5) await this.advance(5);
    if (!settled) throw new Error(`the promise did not settle within ${limitMs} ms`);
    return work;
  }
  private set(ms: number, everyMs: number | null, act: () => void): () => void {
    const timer = { dueMs: this.nowMs + ms, everyMs, act };
    this.timers.add(timer);
    return () => {
      this.timers.delete(timer);
    };
  }
  private next(untilMs: number): Timer | undefined {
    const due = [...this.timers].filter(({ dueMs }) => dueMs <= untilMs);
    return due.sort((a, b) => a.dueMs - b.dueMs)[0];
  }
}
