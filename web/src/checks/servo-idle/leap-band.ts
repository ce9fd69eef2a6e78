// SPDX-License-Identifier: MIT
// Dead band of a servo that follows in leaps: it draws current at each, when the pulse is one dead band away from where it
// stands. From the last leap before a turn to the first after it the pulse moves by twice the dead band less one leap,
// and a leap is as long as the way between two of them. Pure.
import { mean } from 'simple-statistics';
import { uncertain, type Quantity } from '#core/measurements/quantity';
import { rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { CurrentRun } from './current-runs.ts';
import { fewestTurns, followsNot, onsetUs, spreadOfMean, widthAt, type Input } from './ramp-width.ts';

/** The rig moves its pulse once a frame of 20 ms and sends it up to a frame later; the loop that acts on it takes 3 to
 *  20 ms more: 12 to 40 ms at 40 us a second (computed). */
const lateUs = { middle: 1, half: 0.5 } as const;
/** A leap just after a turn, before the servo heard of it, belongs to the ramp before. */
const heardS = 0.02;

/** A simple servo may need several frames of drive for one leap: their pauses are this much shorter than those between
 *  leaps (from the model). */
const shorterBy = 2.5;

interface Onset {
  readonly ramp: number;
  readonly atS: number;
  readonly widthUs: number;
}
/** us. Throws NotMeasurable where leaps are missing. */
export function leapBand(input: Input, runs: readonly CurrentRun[]): Quantity {
  const { across, leaps } = waysBetween(firstOfEach(onsetsOf(input, runs)));
  if (across.length < fewestTurns || leaps.length < 2) throw new NotMeasurable(followsNot);
  return uncertain((mean(across) + mean(leaps)) / 2 - lateUs.middle, [
    [typeA('turns', 'from turn to turn', across.length - 1), spreadOfMean(across) / 2],
    [typeA('leaps', 'from leap to leap', leaps.length - 1), spreadOfMean(leaps) / 2],
    [typeB('frame', 'when the pulse reaches the servo', 'computed'), rectangular(lateUs.half)],
    [typeB('onset', 'when the current is seen to come', 'computed'), rectangular(onsetUs)],
  ]);
}
/** From one leap to the next: within a ramp, and back across a turn, us. */
function waysBetween(onsets: readonly Onset[]): { across: number[]; leaps: number[] } {
  const across: number[] = [];
  const leaps: number[] = [];
  onsets.slice(1).forEach((onset, k) => {
    const before = onsets[k];
    const backUs = (before.widthUs - onset.widthUs) * (goesUp(before.ramp) ? 1 : -1);
    if (onset.ramp === before.ramp) leaps.push(Math.abs(backUs));
    if (onset.ramp === before.ramp + 1) across.push(backUs);
  });
  return { across, leaps };
}
const goesUp = (ramp: number): boolean => ramp % 2 === 0;

function onsetsOf({ samples, evidence: { ramps } }: Input, runs: readonly CurrentRun[]): Onset[] {
  return runs.flatMap(({ fromS }) => {
    const ramp = ramps.findLastIndex((at) => fromS - heardS > at.fromS);
    return ramp < 0 ? [] : [{ ramp, atS: fromS, widthUs: widthAt(samples, fromS) }];
  });
}
/** Of the frames that drive one leap the first: where the pauses are of two kinds, short ones don't part leaps. */
function firstOfEach(onsets: readonly Onset[]): Onset[] {
  const pauseS = (k: number) => onsets[k].atS - (onsets[k - 1]?.atS ?? Number.NEGATIVE_INFINITY);
  const inRamp = onsets.flatMap((onset, k) => (onset.ramp === onsets[k - 1]?.ramp ? [pauseS(k)] : []));
  const shortS = shortPause(inRamp.toSorted((a, b) => a - b));
  return onsets.filter((_, k) => pauseS(k) > shortS);
}
/** The longest of the short kind, 0 where all are of one kind. */
function shortPause(rising: readonly number[]): number {
  const ratios = rising.slice(1).map((longer, k) => longer / rising[k]);
  const most = Math.max(0, ...ratios);
  return most > shorterBy ? rising[ratios.indexOf(most)] : 0;
}
