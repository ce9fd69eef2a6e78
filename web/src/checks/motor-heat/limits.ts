// SPDX-License-Identifier: MIT
// Limits of motor-heat: no label and no class rates these constants, so its own past, unless a person set their own.
import { limitsFor } from '#core/limits/part-limit';
import type { Car } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';
import { results } from './analysis.ts';

export const limits = (car: Car): Readonly<Record<string, Limit>> =>
  limitsFor({ checkId: 'motor-heat', part: 'motor', results }, car);
