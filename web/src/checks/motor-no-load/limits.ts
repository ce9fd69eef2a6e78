// SPDX-License-Identifier: MIT
// Limits of motor-no-load: the motor's own label; without a rating, the upper end of its class times 1.25.
import type { Car } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';

/** Upper end of the usual no-load current at 7.4 V by turns, A; from memory. */
const classUpperA: readonly (readonly [turns: number, upperA: number])[] = [
  [6, 12],
  [7, 9],
  [8, 7],
  [9, 6],
  [10, 5.5],
  [12, 6],
  [15, 4.5],
  [19, 3.5],
  [23, 3],
  [60, 2],
];
const allowance = 1.25;
const watchAllowance = 1.15;

export function limits({ motor }: Car): Readonly<Record<string, Limit>> {
  const kv = motor.ratedKvRpmPerV;
  const tolerance = motor.ratedKvTolerance;
  return {
    'no-load-current': currentLimit(motor.turns, motor.ratedNoLoadA),
    kv: {
      min: kv * (1 - tolerance),
      max: kv * (1 + tolerance),
      unit: 'rpm/V',
      kind: 'rating',
      source: `label of the motor, within ${Math.round(tolerance * 100)} % (from memory), at 25 C`,
    },
  };
}
function currentLimit(turns: number, ratedA: number | undefined): Limit {
  if (ratedA === undefined) {
    const upper = (classUpperA.find(([upTo]) => turns <= upTo) ?? classUpperA[classUpperA.length - 1])[1];
    const source = 'upper end of its class times 1.25, until it has a baseline; from memory, no source';
    return { max: upper * allowance, unit: 'A', kind: 'common practice', source };
  }
  return {
    max: ratedA * allowance,
    warnMax: ratedA * watchAllowance,
    unit: 'A',
    kind: 'rating',
    source: 'label of the motor at 7.4 V, plus 25 % (from memory)',
  };
}
