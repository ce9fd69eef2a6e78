// SPDX-License-Identifier: MIT
// How long the rail needs after a load step to come back to within 2 % of its setting, as seen in the tap's bandwidth.
// The bursts of one run start alike, so their mean is taken; between two samples it falls as an exponential.
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
/** From the sample of the marked conversion to the step: it ends 92 us after its sample, then the register chain is
 *  shifted. 130 to 141 us on the emulated processor; the model of the car sees it up to 24 us later, 138 us on the mean
 *  of five cars. */
const stepAfterSample = { meanS: 143e-6, halfWidthS: 15e-6 } as const;
/** The first sample after the step, counted from the marked one. */
const firstAfter = 2;

export function recoveryOf(name: ResultName, input: Input): Finding {
  const bursts = input.evidence.loadBursts;
  if (bursts.length === 0) throw new NotMeasurable('No burst with a load step was recorded. Run again.');
  return measured(name, recoveryFrom(waveOf(input, bursts)), {
    formula:
      "Time from the load step until the rail, in the tap's bandwidth, is for the last time further than 2 % of its setting from its settled value.",
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
}
function waveOf(input: Input, bursts: readonly KeptBurst[]): Wave {
  const each = bursts.map((burst) => errorsOf(input, burst));
  const length = Math.min(...each.map((errors) => errors.length));
  const errors = Array.from({ length }, (_, k) => mean(each.map((one) => one[k])));
  const [{ tap, intervalS }] = bursts;
  const bandV = recoveredShare * input.car.controller.railSettingV;
  return { errors, bandV, u: sampleU(input, tap, bursts.length), intervalS };
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
const timeOf = ({ intervalS }: Wave, k: number): number => k * intervalS - stepAfterSample.meanS;

function recoveryFrom(wave: Wave): Quantity {
  const outside = wave.errors.findLastIndex((error) => Math.abs(error) > wave.bandV);
  return widened(leftAfter(wave, outside), fired, rectangular(stepAfterSample.halfWidthS));
}
const neverBack =
  'The rail was still on its way when the load of 40 ms ended, so its recovery is unknown. Look at its drop and its lowest voltage first, then run again.';
function leftAfter(wave: Wave, outside: number): Quantity {
  if (outside >= wave.errors.length - settledSamples) throw new NotMeasurable(neverBack);
  if (outside < firstAfter) return beforeSeen(wave);
  // At its first sample the dip may still be falling.
  return outside > firstAfter && falls(wave, outside) ? leftBand(wave, outside) : between(wave, outside);
}
const fired = typeB('fired', 'moment of the load step', 'seen on the emulated processor');

function falls({ errors, u }: Wave, k: number): boolean {
  const [here, next] = [errors[k], errors[k + 1] ?? 0];
  return here * next > 0 && Math.abs(next) > u;
}
function leftBand(wave: Wave, k: number): Quantity {
  const pair = [k, k + 1].map((at) => sampleAt(wave, at));
  const left = combined(pair, (here, next) => timeOf(wave, k) + sinceS(wave, here, next));
  return widened(left, bent, rectangular(bentShare * left.value));
}
/** How far a recovery that is no plain exponential was off on the model's rails. */
const bentShare = 0.02;
const bent = typeB('bent', 'an exponential between two samples', "seen on the model's rails");
const sampleAt = ({ errors, u }: Wave, k: number): Quantity =>
  uncertain(Math.abs(errors[k]), [
    [typeB(`error ${k}`, 'noise and steps of the converter near the 2 % band', 'rig description'), u],
  ]);
/** Seconds from a sample to the moment at which an exponential through it and the next leaves the band. */
const sinceS = ({ bandV, intervalS }: Wave, here: number, next: number): number =>
  (intervalS * Math.log(here / bandV)) / Math.log(here / next);

/** All that is known: within the band at the first samples after the step, so back before the second. */
const beforeSeen = ({ intervalS }: Wave): Quantity => within(0.8 * intervalS, 0.85 * intervalS);
/** All that is known of one that rings, or was still falling: between the last sample outside the band and the next. */
const between = (wave: Wave, outside: number): Quantity =>
  within(timeOf(wave, outside) + wave.intervalS / 2, wave.intervalS / 2);
const within = (valueS: number, halfWidthS: number): Quantity =>
  uncertain(valueS, [
    [typeB('grid', 'samples are 104 µs apart', 'rig description'), rectangular(halfWidthS)],
  ]);
