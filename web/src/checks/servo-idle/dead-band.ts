// SPDX-License-Identifier: MIT
// Dead band from slow ramps: while the pulse moves one way the servo follows in small steps and draws current; after
// a turn it is silent until the pulse has gone back across the whole dead band. The silence is twice the dead band,
// less up to one of the servo's own steps, which differ from turn to turn.
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { uncertain, type Quantity } from '#core/measurements/quantity';
import { rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

type Input = AnalysisInput<Evidence>;
/** A window of 30 ms: noise of 4 mA a value becomes 0.7 mA. */
const windowScans = 32;
/** Four times the noise of such a window, from memory of the tap's own. */
const leastA = 2.5e-3;
const shareOfLevel = 0.3;
/** Pulses reach a servo once a frame of 20 ms, half a frame late, and the loop that acts on them is late as well: some
 *  20 ms at 40 us a second (computed). */
const lateUs = 0.8;
const fewestTurns = 4;

export function deadBandOf(input: Input, idleA: number): Quantity {
  const silences = input.evidence.ramps.slice(1).map((ramp) => silenceUs(input, ramp, idleA));
  if (silences.length < fewestTurns)
    throw new NotMeasurable('The run ended before the last turn. Run again.');
  const middle = mean(silences);
  const sd = sampleStandardDeviation(silences);
  const u = sd / 2 / Math.sqrt(silences.length);
  // A silence lies evenly between twice the dead band less a step and twice the dead band: sd is step/sqrt(12).
  const quarterStep = (Math.sqrt(12) * sd) / 4;
  return uncertain(middle / 2 + quarterStep - lateUs / 2, [
    [typeA('turns', 'from turn to turn', silences.length - 1), u],
    [
      typeB('step', "the servo's own step at a turn", 'computed from the turns'),
      rectangular(quarterStep + 0.1),
    ],
    [typeB('frame', 'when the pulse reaches the servo', 'computed'), rectangular(lateUs / 2)],
    [typeB('onset', 'when the current is seen again', 'computed'), rectangular(0.5)],
  ]);
}
/** From the turn to where current flows again, us of pulse. */
function silenceUs({ samples }: Input, ramp: Stretch, idleA: number): number {
  const { timeS, value, lost } = samples.series('railCurrent', ramp.fromS, ramp.toS);
  if (lost > 0) throw new NotMeasurable(`${lost} scans were lost in a ramp. Check the cable and run again.`);
  const smooth = smoothed(value).map((amps) => amps - idleA);
  const levelA = mean(smooth.slice(Math.floor(0.6 * smooth.length)));
  if (!(levelA > leastA / 2)) throw new NotMeasurable(followsNot);
  const threshold = Math.max(leastA, shareOfLevel * levelA);
  const [from, to] = longestBelow(smooth, threshold);
  if (to - from < 2 || to === smooth.length) throw new NotMeasurable(followsNot);
  const [turnS, againS] = [ramp.fromS, timeS[to + windowScans / 2]];
  return Math.abs(widthAt(samples, againS) - widthAt(samples, turnS));
}
const followsNot =
  'No silence with current before and after it was seen while the pulse moved slowly: the servo never rests, or does not follow. Look at its hunting and its plug, then run again.';

/** Moving mean; value k is the mean of the window that begins at k. */
function smoothed(values: Float64Array): number[] {
  const means: number[] = [];
  let sum = 0;
  values.forEach((value, k) => {
    sum += value - (k >= windowScans ? values[k - windowScans] : 0);
    if (k >= windowScans - 1) means.push(sum / windowScans);
  });
  return means;
}
/** Longest run below the threshold, as indices [from, to). */
function longestBelow(values: readonly number[], threshold: number): [number, number] {
  let longest: [number, number] = [0, 0];
  let from = 0;
  for (let k = 0; k <= values.length; k++) {
    if (k < values.length && values[k] < threshold) continue;
    if (k - from > longest[1] - longest[0]) longest = [from, k];
    from = k + 1;
  }
  return longest;
}
/** Commanded width, in a straight line between the blocks that tell it. */
function widthAt(samples: Input['samples'], atS: number): number {
  const { timeS, steeringUs } = samples.status(atS - 0.05, atS + 0.05);
  const after = timeS.findIndex((t) => t > atS);
  if (after < 1) throw new NotMeasurable('The pulse width was not recorded in a ramp. Run again.');
  const part = (atS - timeS[after - 1]) / (timeS[after] - timeS[after - 1]);
  return steeringUs[after - 1] + part * (steeringUs[after] - steeringUs[after - 1]);
}
