// SPDX-License-Identifier: MIT
// Limits of timing-sweep: only the drift has one; what a degree brings is for the person to weigh.
import { limitsFor } from '#core/limits/part-limit';
import type { Car } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';
import { results } from './analysis.ts';

export const limits = (car: Car): Readonly<Record<string, Limit>> =>
  limitsFor({ checkId: 'timing-sweep', part: 'motor', results }, car);
