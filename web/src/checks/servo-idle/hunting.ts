// SPDX-License-Identifier: MIT
// What of a servo's resting current alternates: its r.m.s. value with the tap's own noise taken out, and how many
// pulses of current come a second. Plain columns in, quantities out.
import { mean, sampleStandardDeviation, sampleVariance } from 'simple-statistics';
import { uncertain, type Quantity } from '#core/measurements/quantity';
import { clockLine, gainLines, rectangular, typeA, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, quietStretch, tapOf } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

type Input = AnalysisInput<Evidence>;
export interface Alternating {
  readonly rms: Quantity;
  readonly pulsesPerS: Quantity;
}
/** Two conversions 104 us apart make one value: steps of current are rounded a little (computed). */
const bandwidthShare = 0.03;
const parts = 8;
/** The noise of codes depends on where the mean lies between two of them: so far may it differ from that of the zero
 *  (computed for a noise of 0.6 of a code). */
const noiseShare = 0.3;
/** Less than this many times the noise left over is no hunting. */
const aboveNoise = 3;

export function alternatingOf(input: Input, stretch: Stretch): Alternating {
  const values = valuesOf(input, stretch);
  const noise = sampleVariance(valuesOf(input, quietStretch(input.samples)));
  const rms = Math.sqrt(Math.max(0, sampleVariance(values) - noise));
  const floorA = Math.sqrt(noiseShare * noise);
  const hunts = rms > aboveNoise * floorA;
  const rises = hunts ? risesThrough(values, mean(values), Math.max(rms / 2, 2 * Math.sqrt(noise))) : [];
  return { rms: rmsQuantity(input, values, rms, floorA), pulsesPerS: perSecond(input, rises, stretch) };
}
function valuesOf({ samples }: Input, { fromS, toS }: Stretch): number[] {
  const { value, lost, clipped } = samples.series('railCurrent', fromS, toS);
  if (lost > 0) throw new NotMeasurable(`${lost} scans were lost at rest. Check the cable and run again.`);
  if (clipped > 0 || value.length < 64)
    throw new NotMeasurable('The rail current was not recorded whole while the servo rested. Run again.');
  return Array.from(value);
}
function rmsQuantity({ rig }: Input, values: readonly number[], rms: number, floorA: number): Quantity {
  const ofParts = Array.from({ length: parts }, (_, k) => {
    const [from, to] = [k, k + 1].map((n) => Math.floor((n * values.length) / parts));
    return sampleStandardDeviation(values.slice(from, to));
  });
  return uncertain(rms, [
    ...gainLines(rig, tapOf(rig, 'railCurrent'), rms, true),
    [
      typeB('noise taken out', "the tap's own noise, taken out", 'computed'),
      floorA ** 2 / (2 * Math.max(rms, floorA)),
    ],
    [
      typeA('parts', 'from part to part of the rest', parts - 1),
      sampleStandardDeviation(ofParts) / Math.sqrt(parts),
    ],
    [
      typeB('edges', 'edges of current between two conversions', 'computed'),
      rectangular(bandwidthShare * rms),
    ],
  ]);
}
/** From the first rise to the last; without three of them there is nothing to count. */
function perSecond({ samples }: Input, rises: readonly number[], { fromS, toS }: Stretch): Quantity {
  const { timeS } = samples.series('railCurrent', fromS, toS);
  const found = rises.length < 3 ? { rate: 0, overS: toS - fromS } : between(timeS, rises);
  return uncertain(found.rate, [
    [typeB('scan', 'rises are seen once a scan', 'rig description'), rectangular(scanOff(found, timeS))],
    clockLine(samples.clock, found.rate),
  ]);
}
function between(timeS: Float64Array, rises: readonly number[]) {
  const overS = timeS[rises[rises.length - 1]] - timeS[rises[0]];
  return { rate: (rises.length - 1) / overS, overS };
}
/** Either end may be a scan off; without rises, one pulse may have gone unseen. */
function scanOff({ rate, overS }: { rate: number; overS: number }, timeS: Float64Array): number {
  return rate === 0 ? 1 / overS : (2 * rate * (timeS[1] - timeS[0])) / overS;
}
/** Where a line rises from below `middle - half` to above `middle + half`. */
function risesThrough(line: readonly number[], middle: number, half: number): number[] {
  let below = false;
  const rises: number[] = [];
  line.forEach((value, k) => {
    if (below && value > middle + half) rises.push(k);
    below = value < middle - half || (below && value <= middle + half);
  });
  return rises;
}
