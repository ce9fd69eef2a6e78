// SPDX-License-Identifier: MIT
// The host's clock in Node, for rigs that live in real time. A program that was held up hears first what came
// meanwhile, and only then that time is over.
import type { Clock } from '#session/clock';

/** A timer so late tells of a program held up; an answer may have been here in time. */
const heldUpMs = 50;
const hearMs = 50;

export const nodeClock: Clock = {
  now: () => performance.now(),
  after(ms, act) {
    const dueMs = performance.now() + ms;
    const due = (): void => {
      if (performance.now() - dueMs < heldUpMs) act();
      else timer = setTimeout(act, hearMs);
    };
    let timer = setTimeout(due, ms);
    return () => clearTimeout(timer);
  },
  every(ms, act) {
    const timer = setInterval(act, ms);
    return () => clearInterval(timer);
  },
};
