// SPDX-License-Identifier: MIT
// Limits of gear-mesh: no label rates a mesh, so its own past or the class, unless a person set their own.
import { limitsFor } from '#core/limits/part-limit';
import type { Car } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';
import { results } from './analysis.ts';

export const limits = (car: Car): Readonly<Record<string, Limit>> =>
  limitsFor({ checkId: 'gear-mesh', part: 'drive', results }, car);
