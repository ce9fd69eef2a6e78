// SPDX-License-Identifier: MIT
// Gearing backward: which pinion and spur come nearest to a wanted ratio, roll-out or speed. Whole teeth only, so
// the answer tells how far it misses.
import type { Drive } from '../parts/part.ts';
import { finalDriveRatio, rollOutM } from './gearing.ts';

export interface Choice {
  readonly pinionTeeth: number;
  readonly spurTeeth: number;
  readonly ratio: number;
  readonly rollOutM: number;
  /** (ratio got - ratio wanted) / ratio wanted. */
  readonly miss: number;
}
export interface Stock {
  /** Teeth of what lies in the box. */
  readonly pinions: readonly number[];
  readonly spurs: readonly number[];
}
/** The nearest first. Throws RangeError for a target that is no positive number or an empty box. */
export function choicesFor(targetRatio: number, drive: Drive, { pinions, spurs }: Stock): readonly Choice[] {
  if (!(targetRatio > 0))
    throw new RangeError(`a ratio of ${targetRatio} can't be reached: it must be more than 0`);
  if (pinions.length === 0 || spurs.length === 0)
    throw new RangeError('name at least one pinion and one spur');
  return spurs
    .flatMap((spurTeeth) =>
      pinions.map((pinionTeeth) => choice(targetRatio, { ...drive, pinionTeeth, spurTeeth })),
    )
    .toSorted((a, b) => Math.abs(a.miss) - Math.abs(b.miss));
}
function choice(target: number, drive: Drive): Choice {
  const ratio = finalDriveRatio(drive);
  const { pinionTeeth, spurTeeth } = drive;
  return { pinionTeeth, spurTeeth, ratio, rollOutM: rollOutM(drive), miss: (ratio - target) / target };
}
export const ratioForRollOut = (metres: number, { tyreDiameterM }: Drive): number =>
  (Math.PI * tyreDiameterM) / metres;
/** The ratio at which a motor of this speed moves the car at that speed. */
export const ratioForSpeed = (metresPerS: number, motorRpm: number, { tyreDiameterM }: Drive): number =>
  ((motorRpm / 60) * Math.PI * tyreDiameterM) / metresPerS;
/** Every pinion from `from` to `to`. */
export const pinionsFrom = (from: number, to: number): number[] =>
  Array.from({ length: to - from + 1 }, (_, k) => from + k);
