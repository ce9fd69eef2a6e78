// SPDX-License-Identifier: MIT
// What the faults of radio, receiver and throttle settings do to a healthy car's numbers. Severity 0 leaves every number as it was.
import type { Effects } from './fault-effects.ts';

export const controlEffects: Effects = {
  'crossed-channels': ({ radio }, severity) => {
    radio.crossed = severity > 0.5;
  },
  'reversed-throttle': ({ radio }, severity) => {
    if (severity <= 0.5) return;
    const [brakeS, neutralS, fullS] = radio.throttleS;
    radio.throttleS = [2 * neutralS - brakeS, neutralS, 2 * neutralS - fullS];
  },
  'no-fail-safe': ({ radio }, severity) => {
    radio.failSafeS += 4 * severity;
    radio.staleS = 0.4 * severity;
  },
};
