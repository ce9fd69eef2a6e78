// SPDX-License-Identifier: MIT
// The worker's own clock for a real rig. It is the only place here that sets timers of the browser.
import type { Clock } from '#session/clock';

export const wallClock: Clock = {
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
