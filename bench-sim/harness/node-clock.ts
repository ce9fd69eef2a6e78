// SPDX-License-Identifier: MIT
// The host's clock in Node, for rigs that live in real time.
import type { Clock } from '#session/clock';

export const nodeClock: Clock = {
  now: () => performance.now(),
  after(ms, act) {
    const timer = setTimeout(act, ms);
    return () => clearTimeout(timer);
  },
  every(ms, act) {
    const timer = setInterval(act, ms);
    return () => clearInterval(timer);
  },
};
