// SPDX-License-Identifier: MIT
// Does the holding current say that the linkage binds? Held against the level of the steps before, so that neither
// the tap's zero nor the servo's own electronics count. It knows currents, no drives.
import { median } from 'simple-statistics';
import type { Stretch } from '../stretch.ts';
import type { Currents } from './steering-bench.ts';

/** Friction alone leaves a servo standing some tenths of a degree short, with up to 30 mA (computed from the model). */
export const clearOfFrictionA = 0.035;
/** A horn that slips under less than the tyres need makes the servo draw up to some 60 mA more while it is turned on
 *  its spline (computed from the model), and no more however far it is driven. */
export const clearOfSlipA = 0.075;
/** Above the greatest of the free levels. */
const beyond = { share: 1.25, byA: 0.01 } as const;

export interface FreeLevel {
  readonly middleA: number;
  /** A current above this binds. */
  readonly boundA: number;
}
export const meanA = (samples: Currents, { fromS, toS }: Stretch): number => {
  const { value } = samples.series('railCurrent', fromS, toS);
  return value.reduce((sum, i) => sum + i, 0) / value.length;
};
/** Of the steps that were free, at least one. */
export function freeLevel(levelsA: readonly number[], leastRiseA: number = clearOfFrictionA): FreeLevel {
  const middleA = median([...levelsA]);
  const greatestA = Math.max(...levelsA);
  return { middleA, boundA: Math.max(middleA + leastRiseA, beyond.share * greatestA + beyond.byA) };
}
