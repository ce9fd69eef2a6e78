// SPDX-License-Identifier: MIT
// Limits of servo-no-load: no label rates them, so baseline or class.
import { limitsFor } from '#core/limits/part-limit';
import type { Car } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';
import { results } from './analysis.ts';

export const limits = (car: Car): Readonly<Record<string, Limit>> =>
  limitsFor({ checkId: 'servo-no-load', part: 'servo', results }, car);
