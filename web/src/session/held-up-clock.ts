// SPDX-License-Identifier: MIT
// A real-time clock from the timers of a page or of Node. A program that was held up hears first what came
// meanwhile, and only then that time is over.
import type { Clock } from './clock.ts';

/** What the surroundings give; both return a function that cancels. */
export interface Timers {
  now(): number;
  once(ms: number, act: () => void): () => void;
  every(ms: number, act: () => void): () => void;
}
/** A timer so late tells of a program held up; an answer may have been here in time. */
const heldUpMs = 50;
const hearMs = 50;

export const heldUpClock = ({ now, once, every }: Timers): Clock => ({
  now,
  after(ms, act) {
    const dueMs = now() + ms;
    const due = (): void => {
      if (now() - dueMs < heldUpMs) act();
      else cancel = once(hearMs, act);
    };
    let cancel = once(ms, due);
    return () => cancel();
  },
  every,
});
