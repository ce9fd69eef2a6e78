// SPDX-License-Identifier: MIT
// Limit of servo-stall: the label of the very servo at its rated voltage, within the label's tolerance.
import type { Car } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';

export function limits({ servo }: Car): Readonly<Record<string, Limit>> {
  const { ratedStallA, ratedStallTolerance, ratedVoltageV } = servo;
  if (ratedStallA === undefined) return {};
  return {
    'stall-current': {
      min: ratedStallA * (1 - ratedStallTolerance),
      max: ratedStallA * (1 + ratedStallTolerance),
      unit: 'A',
      kind: 'rating',
      source: `label of the servo at ${ratedVoltageV} V, within ${Math.round(ratedStallTolerance * 100)} %`,
    },
  };
}
