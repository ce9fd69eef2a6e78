// SPDX-License-Identifier: MIT
// Limits of joint-drop: each joint by its kind, a lead by its copper, unless the part has a baseline or a person set
// their own.
import { jointLimit } from '#core/limits/joint-limits';
import { limitsFor } from '#core/limits/part-limit';
import type { Car } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';
import { results } from './analysis.ts';
import { jointsOf, resultOf } from './joint-list.ts';

export function limits(car: Car): Readonly<Record<string, Limit>> {
  const joints = jointsOf(car);
  const byKind = Object.fromEntries(joints.map((joint) => [resultOf(joint).id, jointLimit(joint)]));
  const all = [...results, ...joints.map(resultOf)];
  return { ...byKind, ...limitsFor({ checkId: 'joint-drop', part: 'leads', results: all }, car) };
}
