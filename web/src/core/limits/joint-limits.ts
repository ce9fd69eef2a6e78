// SPDX-License-Identifier: MIT
// How much a joint or a lead may have: usual values of good joints and the copper of a lead's gauge and length. It
// knows parts, no check.
import { gaugeOhmPerM } from '../measurements/copper.ts';
import type { Joint } from '../parts/part.ts';
import type { Limit } from '../verdicts/limit.ts';

/** Ohms at most, and what good ones have; from memory and computed, no source. */
export const jointOhms = {
  solder: { most: 0.3e-3, words: 'solder joint, good ones have less than 0.1 mΩ' },
  bullet: { most: 0.5e-3, words: 'bullet plug of 4 to 5 mm, good ones have 0.1 to 0.3 mΩ' },
  plug: { most: 40e-3, words: 'small plug of the receiver rail, good ones have 10 to 20 mΩ' },
} as const;
/** Strands are laid longer than the wire, and a length is measured with a ruler. */
const leadAllowance = 1.1;
const lengthShare = 0.01;

/** Copper of a lead at 20 C, ohm. */
export const leadOhm = ({ gaugeAwg = 12, lengthM = 0.1 }: Joint): number => gaugeOhmPerM(gaugeAwg) * lengthM;

export function jointLimit(joint: Joint): Limit {
  const shared = { unit: 'ohm', kind: 'common practice' } as const;
  if (joint.kind !== 'lead') {
    const { most, words } = jointOhms[joint.kind];
    return { ...shared, max: most, source: `${words}; from memory, no source` };
  }
  return {
    ...shared,
    max: leadAllowance * leadOhm(joint),
    source: `copper of ${joint.gaugeAwg} AWG and ${joint.lengthM} m at 20 °C (ASTM B258, IEC 60287-1-1) plus 10 %; the allowance common practice, no source`,
    doubt: { words: 'length of the lead', share: lengthShare },
  };
}
