// SPDX-License-Identifier: MIT
// What the faults of supply and receiver rail do to a healthy car's numbers. Severity 0 leaves every number as it was.
import type { Effects } from './fault-effects.ts';
import { railSourceOhm } from './steady-state.ts';

export const supplyEffects: Effects = {
  'soft-rail': (car, severity) => {
    car.rail.droopOhm += severity * (0.14 - railSourceOhm(car));
  },
  'rail-current-limit': ({ rail }, severity) => {
    rail.limitA += severity * (1.5 - rail.limitA);
  },
};
