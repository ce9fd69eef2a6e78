// SPDX-License-Identifier: MIT
// Limits of rail-ripple: no label rates it, so baseline or class, unless a person set their own.
import { limitsFor } from '#core/limits/part-limit';
import type { Car } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';
import { results } from './analysis.ts';

export const limits = (car: Car): Readonly<Record<string, Limit>> =>
  limitsFor({ checkId: 'rail-ripple', part: 'controller', results }, car);
