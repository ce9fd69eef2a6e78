// SPDX-License-Identifier: MIT
// rail-sag: source resistance from all load combinations (errors on both axes), steady drop at the greatest one,
// deepest dip and recovery from bursts. Pure.
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { NotMeasurable, reading, type Bench } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import { dipOf } from './dip.ts';
import { headRoomLack } from '../head-room.ts';
import type { Evidence } from './evidence.ts';
import { recoveryOf } from './recovery.ts';
import { sourceOf } from './source-line.ts';
import { dropOf } from './steady-drop.ts';

export const results = [
  { id: 'source-resistance', title: 'Source resistance of the rail', unit: 'ohm' },
  { id: 'steady-drop', title: 'Steady drop at the greatest load', unit: 'V' },
  { id: 'deepest-dip', title: 'Lowest rail voltage', unit: 'V', level: 'railVoltage' },
  { id: 'recovery', title: 'Recovery to 2 %', unit: 's' },
  { id: 'rail-at-rest', title: 'Rail at rest', unit: 'V', level: 'railVoltage' },
] as const;
type Input = AnalysisInput<Evidence>;

export function analyse(input: Input): readonly Finding[] {
  return guarded(results, () => {
    requireHeadRoom(input);
    const one = (k: number, make: () => Finding) => guarded([results[k]], () => [make()]);
    return [
      ...one(0, () => sourceOf(results[0], input)),
      ...one(1, () => dropOf(results[1], input)),
      ...one(2, () => dipOf(results[2], input)),
      ...one(3, () => recoveryOf(results[3], input)),
      ...one(4, () => restAt(input)),
    ];
  });
}
/** Without head-room the rail follows the pack and its sag says nothing of the regulator. */
function requireHeadRoom(input: Input): void {
  const lack = headRoomLack(input, input.evidence.rest);
  if (lack) throw new NotMeasurable(`${lack} Charge the pack, then run again.`);
}
function restAt(input: Input): Finding {
  const { rest } = input.evidence;
  const bench: Bench = input;
  const value = reading(bench, 'railVoltage', rest);
  return measured(results[4], value, {
    formula: 'Mean of the rail voltage with no load switched on.',
    evidence: [{ ...rest, taps: ['railVoltage'] }],
  });
}
