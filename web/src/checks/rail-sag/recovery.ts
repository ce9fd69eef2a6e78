// SPDX-License-Identifier: MIT
// How long the rail needs after a load step to come back to within 2 % of its setting. The bursts of one run start alike,
// so their mean is taken. The tap's low-pass shows an exponential of time constant T as y = v / (1 - F/T), F its own, once
// its memory of the step is gone: from two samples after that follow T, v, and the moment at which v left the band.
import { mean, median } from 'simple-statistics';
import { combined, uncertain, widened, type Quantity } from '#core/measurements/quantity';
import { measured, type ResultName } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { ownShare, rectangular, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, tapOf } from '#core/measurements/tap-reading';
import { codeStepV, stretchOf, wholeWave, type KeptBurst } from '../burst-wave.ts';
import type { AnalysisInput } from '../check.ts';
import type { Evidence } from './evidence.ts';

type Input = AnalysisInput<Evidence>;
/** Samples at the end of the load that the settled value is taken over. */
const settledSamples = 100;
/** Within the 40 ms of the load, which the rig ends on its own millisecond. */
const loadSamples = 340;
const recoveredShare = 0.02;
/** The rig switches when the marked sample is converted; the next one is held 12 us later, less some 4 us to switch
 *  (computed from the converter's clock and the length of the register chain). */
const sampledAfterStepS = 8e-6;
/** The low-pass has forgotten the step but for a hundredth after so many of its time constants. */
const forgotten = 4.6;
/** A rail that comes back faster than this against the low-pass can't be told from it. */
const slowest = 1.3;
/** Traced back to less than so many intervals, the fall itself may not have ended: only the bound is known. */
const shortest = 1.45;
/** How far a recovery that is no plain exponential is off (seen on the model of a rail), s and share of the time. */
const bend = { leastS: 15e-6, share: 0.05 } as const;

export function recoveryOf(name: ResultName, input: Input): Finding {
  const bursts = input.evidence.loadBursts;
  if (bursts.length === 0) throw new NotMeasurable('No burst with a load step was recorded. Run again.');
  return measured(name, recoveryFrom(waveOf(input, bursts)), {
    formula:
      "Time from the load step until the rail is for the last time further than 2 % of its setting from its settled value, the tap's low-pass taken out.",
    evidence: bursts.map(stretchOf),
  });
}
/** Distance from the settled value after the step, V, the mean of all bursts; index 0 is the marked sample. */
interface Wave {
  readonly errors: readonly number[];
  readonly bandV: number;
  /** Standard uncertainty of one of the errors, V. */
  readonly u: number;
  readonly intervalS: number;
  readonly filterS: number;
}
function waveOf(input: Input, bursts: readonly KeptBurst[]): Wave {
  const each = bursts.map((burst) => errorsOf(input, burst));
  const length = Math.min(...each.map((errors) => errors.length));
  const errors = Array.from({ length }, (_, k) => mean(each.map((one) => one[k])));
  const [{ tap, intervalS }] = bursts;
  const bandV = recoveredShare * input.car.controller.railSettingV;
  return { errors, bandV, u: sampleU(input, tap, bursts.length), intervalS, filterS: filterS(input, tap) };
}
function errorsOf(input: Input, burst: KeptBurst): number[] {
  const wave = wholeWave(input, burst);
  const step = burst.actionSample ?? 0;
  const loaded = Array.from(wave.subarray(step, Math.min(wave.length, step + loadSamples)));
  const settledV = median(loaded.slice(-settledSamples));
  return loaded.map((v) => v - settledV);
}
/** Noise and rounding become less in the mean; both levels have a non-linearity of their own. */
function sampleU(input: Input, tap: string, bursts: number): number {
  const { noiseLsb, inlLsb } = tapOf(input.rig, tap).error;
  const single = Math.hypot(noiseLsb, rectangular(0.5)) / Math.sqrt(bursts);
  return codeStepV(input) * Math.hypot(single, Math.SQRT2 * rectangular(ownShare * inlLsb));
}
const filterS = ({ rig }: Input, tap: string): number => 1 / (2 * Math.PI * tapOf(rig, tap).cornerHz);
const timeOf = ({ intervalS }: Wave, k: number): number => (k - 1) * intervalS + sampledAfterStepS;

function recoveryFrom(wave: Wave): Quantity {
  const outside = wave.errors.findLastIndex((error) => Math.abs(error) > wave.bandV);
  const clear = clearFrom(wave);
  const traced = traceBack(wave, [Math.max(clear, outside - 1), Math.max(clear, outside)]);
  if (traced) return traced.value > shortest * wave.intervalS ? traced : beforeSeen(wave);
  return outside < clear ? beforeSeen(wave) : between(wave, outside);
}
/** First sample at which the low-pass has forgotten the step. */
const clearFrom = (wave: Wave): number =>
  wave.errors.findIndex((_, k) => timeOf(wave, k) >= forgotten * wave.filterS);

/** From the first of these samples that falls to its next and from which the band was left before that; else null. */
function traceBack(wave: Wave, samples: readonly number[]): Quantity | null {
  for (const k of samples) {
    const left = falls(wave, k) ? leftBand(wave, k) : null;
    if (left && left.value <= timeOf(wave, k + 1)) return left;
  }
  return null;
}
function falls({ errors, u }: Wave, k: number): boolean {
  const [here, next] = [errors[k], errors[k + 1] ?? 0];
  return here * next > 0 && Math.abs(here) > Math.abs(next) && Math.abs(next) > u;
}
function leftBand(wave: Wave, k: number): Quantity {
  const pair = [k, k + 1].map((at) => sampleAt(wave, at));
  const left = combined(pair, (here, next) => timeOf(wave, k) + sinceV(wave, here, next));
  return widened(left, bent, rectangular(Math.max(bend.leastS, bend.share * left.value)));
}
const sampleAt = ({ errors, u }: Wave, k: number): Quantity =>
  uncertain(Math.abs(errors[k]), [
    [typeB(`error ${k}`, 'noise and steps of the converter near the 2 % band', 'rig description'), u],
  ]);
/** Seconds from a sample to the moment at which the rail itself leaves the band, negative where it was before. */
function sinceV({ bandV, intervalS, filterS: lateS }: Wave, here: number, next: number): number {
  const decayS = Math.max(slowest * lateS, intervalS / Math.log(here / next));
  return decayS * Math.log((here * (1 - lateS / decayS)) / bandV);
}
const bent = typeB(
  'bend',
  'recovery taken as an exponential between two samples',
  "seen on the model's rails",
);

/** All that is known: back within the band before the low-pass forgot the step. */
const beforeSeen = ({ intervalS }: Wave): Quantity => within(0.75 * intervalS, 0.8 * intervalS);
/** A rail that rings: somewhere between the last sample outside the band and the next. */
const between = (wave: Wave, outside: number): Quantity =>
  within(timeOf(wave, outside) + wave.intervalS / 2 - wave.filterS, wave.intervalS / 2 + wave.filterS);
const within = (valueS: number, halfWidthS: number): Quantity =>
  uncertain(valueS, [
    [typeB('grid', 'samples are 104 us apart', 'rig description'), rectangular(halfWidthS)],
  ]);
