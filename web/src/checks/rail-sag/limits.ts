// SPDX-License-Identifier: MIT
// Limits of rail-sag, with their kind and source.
import type { Car } from '#core/parts/part';
import type { Limit } from '#core/verdicts/limit';

const greatestSourceOhm = 0.08;
const greatestDropShare = 0.05;
const watchShare = 0.85;

export function limits({ controller }: Car): Readonly<Record<string, Limit>> {
  const { railSettingV, railFloorV } = controller;
  return {
    'source-resistance': {
      max: greatestSourceOhm,
      unit: 'ohm',
      kind: 'common practice',
      source: 'from memory, no source',
    },
    'steady-drop': {
      max: greatestDropShare * railSettingV,
      unit: 'V',
      kind: 'common practice',
      source: '5 % of the setting, from memory, no source',
    },
    'deepest-dip': {
      min: railFloorV,
      warnMin: watchShare * railSettingV,
      unit: 'V',
      kind: 'common practice',
      source: "the receiver's minimum plus 0.5 V; common practice, no source",
    },
  };
}
