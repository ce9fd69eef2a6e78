// SPDX-License-Identifier: MIT
// Limits of motor-coastdown: the drag torque is held against the label's no-load current times the label's torque per
// ampere, else against the class; time, share and inertia against the motor's own past.
import { allowances } from '#core/limits/class-data';
import { limitsFor } from '#core/limits/part-limit';
import type { Candidate } from '#core/limits/precedence';
import type { Car, Motor } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';
import { results } from './analysis.ts';

export const limits = (car: Car): Readonly<Record<string, Limit>> =>
  limitsFor(
    {
      checkId: 'motor-coastdown',
      part: 'motor',
      results,
      ratings: { 'coast-drag-torque': torqueRating(car.motor) },
    },
    car,
  );
function torqueRating({ ratedNoLoadA, ratedKvRpmPerV }: Motor): Candidate {
  if (ratedNoLoadA === undefined) return undefined;
  const ratedMilliNm = (1e3 * ratedNoLoadA * 60) / (2 * Math.PI * ratedKvRpmPerV);
  const { above, watchAbove } = allowances['motor-no-load/no-load-current'];
  return {
    max: ratedMilliNm * (1 + above),
    warnMax: ratedMilliNm * (1 + watchAbove),
    unit: 'mN·m',
    kind: 'rating',
    source: `label of the motor: no-load current times torque per ampere (60/(2 pi kV)), plus ${Math.round(above * 100)} % (from memory)`,
  };
}
