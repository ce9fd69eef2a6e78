// SPDX-License-Identifier: MIT
// Direct-current resistance in the form of IEC 61960-3 (from memory): U1 at the end of 10 s at a low current I1, U2 at
// the end of 1 s at a higher I2, R = (U1 - U2)/(I2 - I1). The standard takes 0.2 and 1 times the capacity in amperes;
// this rig has what its load bank and its pack load draw. Pure.
import { combined, difference, type Quantity } from '#core/measurements/quantity';
import { NotMeasurable, reading } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import type { Evidence } from './evidence.ts';

type Input = AnalysisInput<Evidence>;
export interface TwoLevels {
  readonly ohm: Quantity;
  readonly lightA: number;
  readonly heavyA: number;
}
export function directCurrentOhm(input: Input): TwoLevels {
  const { second } = input.evidence;
  if (!second) throw new NotMeasurable('The two levels of the second way were not reached. Run again.');
  const at = (tap: string) => [reading(input, tap, second.light), reading(input, tap, second.heavy)] as const;
  const [lightV, heavyV] = at('packVoltage');
  const [lightA, heavyA] = at('packCurrentWide');
  const ohm = combined([difference(lightV, heavyV), difference(heavyA, lightA)], (fall, rise) => fall / rise);
  return { ohm, lightA: lightA.value, heavyA: heavyA.value };
}
