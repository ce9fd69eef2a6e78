// SPDX-License-Identifier: MIT
// What the faults of radio, receiver and throttle settings do to a healthy car's numbers. Severity 0 leaves every number as it was.
import type { Effects } from './fault-effects.ts';

export const controlEffects: Effects = {};
