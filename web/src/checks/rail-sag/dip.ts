// SPDX-License-Identifier: MIT
// Lowest rail voltage and recovery from bursts: every conversion of one tap, 104 us apart, with the load step or
// the servo move fired by the rig at a known sample. A dip between two samples is allowed for in the budget.
import { median } from 'simple-statistics';
import { uncertain } from '#core/measurements/quantity';
import { measured, type ResultName } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { type Line, rectangular, typeB } from '#core/measurements/tap-errors';
import { NotMeasurable, tapOf } from '#core/measurements/tap-reading';
import { dipQuantity, lowestOf, stretchOf, wholeWave, type KeptBurst } from '../burst-wave.ts';
import type { AnalysisInput } from '../check.ts';
import type { Evidence } from './evidence.ts';

type Input = AnalysisInput<Evidence>;
/** Samples around the step that a settled value is taken over, at the end of the load. */
const settledSamples = 100;
/** Within the 40 ms of the load, which the rig ends on its own millisecond. */
const loadSamples = 340;
const recoveredShare = 0.02;
/** The rig switches when the marked sample is converted; the next one is held 12 us later, less some 4 us to switch
 *  (computed from the converter's clock and the length of the register chain). */
const sampledAfterStepS = 8e-6;

export function dipOf(name: ResultName, input: Input): Finding {
  const bursts = [...input.evidence.loadBursts, ...input.evidence.servoBursts];
  if (bursts.length === 0) throw new NotMeasurable('No burst was recorded. Run again.');
  const waves = bursts.map((burst) => wholeWave(input, burst));
  const lowest = waves.map((wave) => lowestOf(wave)).toSorted((a, b) => a.value - b.value)[0];
  return measured(name, dipQuantity(input, lowest), {
    formula: 'Lowest value of all bursts, half the greatest fall between two samples allowed for as missed.',
    evidence: bursts.map(stretchOf),
    notes: [`Deepest in a burst at ${lowest.value.toFixed(2)} V as read.`],
  });
}
export function recoveryOf(name: ResultName, input: Input): Finding {
  const bursts = input.evidence.loadBursts;
  if (bursts.length === 0) throw new NotMeasurable('No burst with a load step was recorded. Run again.');
  const [{ intervalS }] = bursts;
  const found = median(bursts.map((burst) => recoveryIn(input, burst)));
  // Within two samples the dip is steeper than a straight line: all that is known is the pair of samples.
  const short = found < 1.5 * intervalS;
  const value = short ? Math.max(found, intervalS / 2) : found;
  return measured(name, uncertain(value, gridLines(intervalS, short)), {
    formula:
      'Time from the load step until the rail is for the last time further than 2 % of its setting from its settled value.',
    evidence: bursts.map(stretchOf),
  });
}
const gridLines = (intervalS: number, short: boolean): Line[] => [
  [
    typeB('grid', 'samples are 104 us apart', 'rig description'),
    rectangular(intervalS * (short ? 0.65 : 0.5)),
  ],
  [typeB('band', 'noise at the edge of the 2 % band', 'computed'), rectangular(intervalS / 2)],
];
function recoveryIn(input: Input, burst: KeptBurst): number {
  const wave = wholeWave(input, burst);
  const step = burst.actionSample ?? 0;
  const loaded = wave.subarray(step, Math.min(wave.length, step + loadSamples));
  const settledV = median(Array.from(loaded.subarray(loaded.length - settledSamples)));
  const band = recoveredShare * input.car.controller.railSettingV;
  const errors = Array.from(loaded, (v) => v - settledV);
  const outside = errors.findLastIndex((error) => Math.abs(error) > band);
  // Never seen outside: it was back, if it ever left, before the first sample.
  const samples = outside < 1 ? 0.5 : outside - 1 + crossing(errors, outside, band);
  const lateS = sampledAfterStepS - filterS(input, burst.tap);
  return samples * burst.intervalS + (outside < 1 ? 0 : lateS);
}
/** What the tap's low-pass is late by: its time constant. */
const filterS = ({ rig }: Input, tap: string): number => 1 / (2 * Math.PI * tapOf(rig, tap).cornerHz);
/** Part of the way from the last sample outside the band to the next, in a straight line. */
function crossing(errors: readonly number[], last: number, band: number): number {
  const [here, next] = [errors[last], errors[last + 1] ?? 0];
  return (here - Math.sign(here) * band) / (here - next);
}
