// SPDX-License-Identifier: MIT
// Limits of throttle-range: no label rates them; class or baseline, unless a person set their own.
import { limitsFor } from '#core/limits/part-limit';
import type { Car } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';
import { results } from './analysis.ts';

export const limits = (car: Car): Readonly<Record<string, Limit>> =>
  limitsFor({ checkId: 'throttle-range', part: 'controller', results }, car);
