// SPDX-License-Identifier: MIT
// Limits of rail-setting: about the setting that was entered, and the receiver's floor.
import { limitsFor } from '#core/limits/part-limit';
import type { Car } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';
import { results } from './analysis.ts';

export const limits = (car: Car): Readonly<Record<string, Limit>> =>
  limitsFor({ checkId: 'rail-setting', part: 'controller', results }, car);
