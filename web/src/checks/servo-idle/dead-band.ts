// SPDX-License-Identifier: MIT
// Dead band from slow ramps of the pulse. A servo that follows smoothly draws current all the way; after a turn it is
// silent across twice its dead band. A servo that follows in leaps draws current at each leap, when the pulse is one
// dead band away from where it stands: from the last leap before a turn to the first after it the pulse moves by twice
// the dead band less one leap, and a leap is as long as the way between two of them.
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { uncertain, type Quantity } from '#core/measurements/quantity';
import { rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import type { Stretch } from '../stretch.ts';
import {
  type CurrentRun,
  currentRuns,
  type SmoothCurrent,
  smoothCurrent,
  thresholdOf,
} from './current-runs.ts';
import type { Evidence } from './evidence.ts';
import { alternatingOf } from './hunting.ts';

type Input = AnalysisInput<Evidence>;
/** The rig moves its pulse once a frame of 20 ms and sends it up to a frame later; the loop that acts on it takes 3 to
 *  20 ms more: 12 to 40 ms at 40 us a second (computed). */
const lateUs = { middle: 1, half: 0.5 } as const;
/** Onset of a current in noise, us (computed). */
const onsetUs = 0.4;
/** Half a step that can't be told from the next, and what it lasts: up to 12 ms of ramp (computed). */
const stepUs = 0.3;
/** One value, s, and the ramps. */
const scanS = 0.94e-3;
const usPerS = 40;
const fewestTurns = 4;
/** Thresholds, of the level that the current reaches. */
const shares = { low: 0.2, high: 0.6 } as const;
/** Share of the second half of the ramps with current: a servo that leaps is silent between its leaps. */
const smoothShare = 0.8;
/** Pulses of current a second at rest. */
const hunts = 1;
const followsNot =
  'No silence with current before and after it was seen while the pulse moved slowly: the servo never rests, or does not follow. Look at its hunting and its plug, then run again.';

export function deadBandOf(input: Input, idleA: number): Quantity {
  const { ramps, rest } = input.evidence;
  if (ramps.length <= fewestTurns) throw new NotMeasurable('The run ended before the last turn. Run again.');
  if (alternatingOf(input, rest).pulsesPerS.value > hunts) throw new NotMeasurable(followsNot);
  const current = currentIn(input, idleA);
  if (current.topA < 1.5 * current.noiseA) throw new NotMeasurable(followsNot);
  const runs = currentRuns(current, shares.low);
  return shareWithCurrent(runs, ramps) > smoothShare ? ofSilences(input, current) : ofLeaps(input, runs);
}
function currentIn({ samples, evidence: { ramps } }: Input, idleA: number): SmoothCurrent {
  const { timeS, value, lost } = samples.series('railCurrent', ramps[0].fromS, ramps.at(-1)!.toS);
  if (lost > 0) throw new NotMeasurable(`${lost} scans were lost in a ramp. Check the cable and run again.`);
  return smoothCurrent(timeS, value, idleA);
}
function shareWithCurrent(runs: readonly CurrentRun[], ramps: readonly Stretch[]): number {
  const halves = ramps.map(({ fromS, toS }) => ({ fromS: (fromS + toS) / 2, toS }));
  return mean(halves.map((half) => within(runs, half) / (half.toS - half.fromS)));
}
const within = (runs: readonly CurrentRun[], { fromS, toS }: Stretch): number =>
  runs.reduce((sum, run) => sum + Math.max(0, Math.min(run.toS, toS) - Math.max(run.fromS, fromS)), 0);

/** Such a servo drives in proportion to how far it is off, and its current goes with the square of that: what it draws
 *  at the edge of the dead band can be too little to see, and the silence is the longer for it. From two thresholds
 *  follows where it would begin if it began with nothing; the edge lies between there and where it is seen. */
function ofSilences(input: Input, current: SmoothCurrent): Quantity {
  const seen = silences(input, currentRuns(current, shares.low));
  const later = silences(input, currentRuns(current, shares.high));
  if (Math.min(seen.length, later.length) < fewestTurns) throw new NotMeasurable(followsNot);
  const [low, high] = [shares.low, shares.high].map((share) => thresholdOf(current, share) / current.topA);
  // A current that jumps is seen before its middle reaches the mean: half of that is taken for each kind.
  const meanUs = (current.scans * scanS * usPerS) / 2;
  const early = Math.max(0, 0.5 - low) * meanUs;
  const side = mean(seen) / 2 + early;
  const slope = Math.max(0, mean(later) / 2 - mean(seen) / 2 - (high - low) * meanUs);
  const hidden = Math.min(side, (slope * Math.sqrt(low)) / (Math.sqrt(high) - Math.sqrt(low)));
  return uncertain(side - hidden / 2 + stepUs, [
    [typeA('turns', 'from turn to turn', seen.length - 1), spreadOfMean(seen) / 2],
    [typeB('onset', 'when the current is seen to end and to come', 'computed'), rectangular(onsetUs + early)],
    [typeB('step', 'small steps that run into one another', 'computed'), rectangular(stepUs)],
    [
      typeB('edge', 'current too small to see at the edge of the dead band', 'computed'),
      rectangular(hidden / 2),
    ],
  ]);
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

interface Onset {
  readonly ramp: number;
  readonly widthUs: number;
}
function ofLeaps(input: Input, runs: readonly CurrentRun[]): Quantity {
  const onsets = onsetsOf(input, runs);
  const across: number[] = [];
  const leaps: number[] = [];
  onsets.slice(1).forEach((onset, k) => {
    const before = onsets[k];
    if (onset.ramp === before.ramp) leaps.push(Math.abs(onset.widthUs - before.widthUs));
    // Even ramps go up: the pulse came back by this much.
    if (onset.ramp === before.ramp + 1)
      across.push((before.widthUs - onset.widthUs) * (before.ramp % 2 === 0 ? 1 : -1));
  });
  if (across.length < fewestTurns || leaps.length < 2) throw new NotMeasurable(followsNot);
  return uncertain((mean(across) + mean(leaps)) / 2 - lateUs.middle, [
    [typeA('turns', 'from turn to turn', across.length - 1), spreadOfMean(across) / 2],
    [typeA('leaps', 'from leap to leap', leaps.length - 1), spreadOfMean(leaps) / 2],
    [typeB('frame', 'when the pulse reaches the servo', 'computed'), rectangular(lateUs.half)],
    [typeB('onset', 'when the current is seen to come', 'computed'), rectangular(onsetUs)],
  ]);
}
/** A leap just after a turn, before the servo heard of it, belongs to the ramp before. */
function onsetsOf({ samples, evidence: { ramps } }: Input, runs: readonly CurrentRun[]): Onset[] {
  return runs.flatMap(({ fromS }) => {
    const ramp = ramps.findLastIndex((at) => fromS - heardS > at.fromS);
    return ramp < 0 ? [] : [{ ramp, widthUs: widthAt(samples, fromS) }];
  });
}
const heardS = 0.02;
const spreadOfMean = (values: readonly number[]): number =>
  sampleStandardDeviation([...values]) / Math.sqrt(values.length);

/** Commanded width, in a straight line between the blocks that tell it. */
function widthAt(samples: Input['samples'], atS: number): number {
  const { timeS, steeringUs } = samples.status(atS - 0.05, atS + 0.05);
  const after = timeS.findIndex((t) => t > atS);
  if (after < 1) throw new NotMeasurable('The pulse width was not recorded in a ramp. Run again.');
  const part = (atS - timeS[after - 1]) / (timeS[after] - timeS[after - 1]);
  return steeringUs[after - 1] + part * (steeringUs[after] - steeringUs[after - 1]);
}
