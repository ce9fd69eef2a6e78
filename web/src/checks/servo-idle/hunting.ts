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
/** Heights at which pulses are counted, as shares of the r.m.s. value. */
const heightShares = [0.25, 0.5, 0.75] as const;
/** Less than this many times the noise left over is no hunting. */
const aboveNoise = 3;

export function alternatingOf(input: Input, stretch: Stretch): Alternating {
  const values = valuesOf(input, stretch);
  const noise = sampleVariance(valuesOf(input, quietStretch(input.samples)));
  const rms = Math.sqrt(Math.max(0, sampleVariance(values) - noise));
  const floorA = Math.sqrt(noiseShare * noise);
  const hunts = rms > aboveNoise * floorA;
  const least = 2 * Math.sqrt(noise);
  const counts = (hunts ? heightShares : []).map((share) =>
    risesThrough(values, mean(values), Math.max(share * rms, least)),
  );
  return { rms: rmsQuantity(input, values, rms, floorA), pulsesPerS: perSecond(input, counts, stretch) };
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
/** From the first rise to the last, counted at three heights: a servo that hunts unevenly draws some smaller pulses.
 *  Without rises there is nothing to count, and one pulse may have gone unseen. */
function perSecond({ samples }: Input, counts: readonly number[][], { fromS, toS }: Stretch): Quantity {
  const { timeS } = samples.series('railCurrent', fromS, toS);
  const [low, rate, high] = counts.map((rises) => rateOf(timeS, rises));
  const uneven = rate === undefined ? 0 : Math.max(Math.abs(low - rate), Math.abs(high - rate));
  const scanS = timeS[1] - timeS[0];
  return uncertain(rate ?? 0, [
    [
      typeB('scan', 'rises are seen once a scan', 'rig description'),
      rectangular(scanOff(rate, toS - fromS, scanS)),
    ],
    [typeB('uneven', 'pulses of uneven height', 'computed from three heights'), rectangular(uneven)],
    clockLine(samples.clock, rate ?? 0),
  ]);
}
function rateOf(timeS: Float64Array, rises: readonly number[]): number {
  return rises.length < 3 ? 0 : (rises.length - 1) / (timeS[rises[rises.length - 1]] - timeS[rises[0]]);
}
/** Either end may be a scan off. */
const scanOff = (rate: number | undefined, overS: number, scanS: number): number =>
  rate ? (2 * rate * scanS) / overS : 1 / overS;
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
