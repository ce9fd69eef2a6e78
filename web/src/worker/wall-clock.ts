// SPDX-License-Identifier: MIT
// The worker's own clock for a real rig. It is the only place here that sets timers of the browser.
import { heldUpClock } from '#session/held-up-clock';

export const wallClock = heldUpClock({
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
