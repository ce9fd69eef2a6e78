// SPDX-License-Identifier: MIT
// The host's clock in Node, for rigs that live in real time.
import { heldUpClock } from '#session/held-up-clock';

export const nodeClock = heldUpClock({
  now: () => performance.now(),
  once(ms, act) {
    const timer = setTimeout(act, ms);
    return () => clearTimeout(timer);
  },
  every(ms, act) {
    const timer = setInterval(act, ms);
    return () => clearInterval(timer);
  },
});
