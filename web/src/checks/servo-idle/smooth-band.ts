// SPDX-License-Identifier: MIT
// Dead band of a servo that follows smoothly: it draws current all the way, and after a turn it is silent across twice its
// dead band. It drives in proportion to how far it is off, and its current goes with the square of that: what it draws at
// the edge of the dead band can be too little to see, and the silence is the longer for it. From two thresholds follows
// where it would begin if it began with nothing; the edge lies between there and where it is seen. Pure.
import { mean } from 'simple-statistics';
import { uncertain, type Quantity } from '#core/measurements/quantity';
import { rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { Stretch } from '../stretch.ts';
import { type CurrentRun, currentRuns, type SmoothCurrent, thresholdOf } from './current-runs.ts';
import { usPerS } from './procedure.ts';
import { fewestTurns, followsNot, onsetUs, spreadOfMean, widthAt, type Input } from './ramp-width.ts';

/** Thresholds, of the level that the current reaches. */
export const shares = { low: 0.2, high: 0.6 } as const;
/** Half a step that can't be told from the next, and what it lasts: up to 12 ms of ramp (computed). */
const stepUs = 0.3;

/** us. Throws NotMeasurable where no silence is seen. */
export function smoothBand(input: Input, current: SmoothCurrent): Quantity {
  const [seen, later] = [shares.low, shares.high].map((share) =>
    silences(input, currentRuns(current, share)),
  );
  if (Math.min(seen.length, later.length) < fewestTurns) throw new NotMeasurable(followsNot);
  const { sideUs, earlyUs, hiddenUs } = edges(current, mean(seen) / 2, mean(later) / 2);
  return uncertain(sideUs - hiddenUs / 2 + stepUs, [
    [typeA('turns', 'from turn to turn', seen.length - 1), spreadOfMean(seen) / 2],
    [
      typeB('onset', 'when the current is seen to end and to come', 'computed'),
      rectangular(onsetUs + earlyUs),
    ],
    [typeB('step', 'small steps that run into one another', 'computed'), rectangular(stepUs)],
    [
      typeB('edge', 'current too small to see at the edge of the dead band', 'computed'),
      rectangular(hiddenUs / 2),
    ],
  ]);
}
/** Half a silence, what the mean takes from it, and what may be too small to see, us. */
function edges(current: SmoothCurrent, seenUs: number, laterUs: number) {
  const [low, high] = [shares.low, shares.high].map((share) => thresholdOf(current, share) / current.topA);
  // A current that jumps is seen before its middle reaches the mean: half of that is taken for each kind.
  const meanUs = (current.scans * current.scanS * usPerS) / 2;
  const earlyUs = Math.max(0, 0.5 - low) * meanUs;
  const sideUs = seenUs + earlyUs;
  const slope = Math.max(0, laterUs - seenUs - (high - low) * meanUs);
  const hiddenUs = Math.min(sideUs, (slope * Math.sqrt(low)) / (Math.sqrt(high) - Math.sqrt(low)));
  return { sideUs, earlyUs, hiddenUs };
}
/** The longest pause of each ramp after a turn, us of pulse. */
function silences({ samples, evidence: { ramps } }: Input, runs: readonly CurrentRun[]): number[] {
  return ramps.slice(1).flatMap((ramp) => {
    const pause = longestPause(runs, ramp);
    return pause ? [Math.abs(widthAt(samples, pause.fromS) - widthAt(samples, pause.toS))] : [];
  });
}
function longestPause(runs: readonly CurrentRun[], { fromS, toS }: Stretch): Stretch | null {
  let longest: Stretch | null = null;
  for (let k = 1; k < runs.length; k++) {
    const pause = { fromS: Math.max(fromS, runs[k - 1].toS), toS: runs[k].fromS };
    if (pause.toS > toS || pause.toS <= fromS) continue;
    if (!longest || pause.toS - pause.fromS > longest.toS - longest.fromS) longest = pause;
  }
  return longest;
}
