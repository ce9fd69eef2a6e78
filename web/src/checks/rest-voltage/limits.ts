// SPDX-License-Identifier: MIT
// Limits of rest-voltage: by the chemistry and the cells that the person entered, unless a person set their own.
import { limitsFor } from '#core/limits/part-limit';
import type { Car } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';
import { results } from './analysis.ts';

export const limits = (car: Car): Readonly<Record<string, Limit>> =>
  limitsFor({ checkId: 'rest-voltage', part: 'pack', results }, car);
