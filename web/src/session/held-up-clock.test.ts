// SPDX-License-Identifier: MIT
import { expect, it } from 'vitest';
import { heldUpClock } from './held-up-clock.ts';

/** Timers by hand: `goTo` lets time pass and fires what is due, late or not. */
function byHand() {
  let nowMs = 0;
  const waiting = new Map<() => void, number>();
  const once = (ms: number, act: () => void) => {
    waiting.set(act, nowMs + ms);
    return () => void waiting.delete(act);
  };
  const goTo = (ms: number) => {
    nowMs = ms;
    for (const [act, due] of waiting) if (due <= ms && waiting.delete(act)) act();
  };
  return { clock: heldUpClock({ now: () => nowMs, once, every: once }), goTo };
}
it('acts when its time is over', () => {
  const { clock, goTo } = byHand();
  let acted = 0;
  clock.after(100, () => acted++);
  goTo(99);
  expect(acted).toBe(0);
  goTo(101);
  expect(acted).toBe(1);
});
it('gives a program that was held up 50 ms more to hear what came meanwhile', () => {
  const { clock, goTo } = byHand();
  let acted = 0;
  clock.after(100, () => acted++);
  goTo(900);
  expect(acted).toBe(0);
  goTo(950);
  expect(acted).toBe(1);
});
it('can be cancelled, before and within those 50 ms', () => {
  const { clock, goTo } = byHand();
  let acted = 0;
  const cancel = clock.after(100, () => acted++);
  goTo(900);
  cancel();
  goTo(2000);
  expect(acted).toBe(0);
});
