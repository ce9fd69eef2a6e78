// SPDX-License-Identifier: MIT
// Limits of first-power: the capacitor against what its label says, where one was entered; the rest by class.
import { limitsFor } from '#core/limits/part-limit';
import type { Car } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';
import { results } from './analysis.ts';

/** Below this share of its nominal value a capacitor bank is worn; from memory, no source. */
const leastShare = 0.8;

export const limits = (car: Car): Readonly<Record<string, Limit>> =>
  limitsFor(
    { checkId: 'first-power', part: 'controller', results, ratings: { capacitance: rating(car) } },
    car,
  );

function rating({ controller: { capacitorF } }: Car): Limit | undefined {
  if (capacitorF === undefined) return undefined;
  return {
    min: leastShare * capacitorF,
    unit: 'F',
    kind: 'rating',
    source: `label of the capacitor, ${(capacitorF * 1e3).toPrecision(3)} mF; ${100 * leastShare} % of it, a share from memory, no source`,
  };
}
