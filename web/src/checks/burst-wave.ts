// SPDX-License-Identifier: MIT
// A burst as a check keeps it: every conversion of one tap, 104 us apart, with an action fired by the rig at a known
// sample. In the tap's unit, and the lowest rail voltage of several with what may lie between two samples.
import { z } from 'zod';
import { uncertain, type Quantity } from '#core/measurements/quantity';
import {
  gainLines,
  linearityLines,
  pinShare,
  rectangular,
  typeB,
  zeroLine,
} from '#core/measurements/tap-errors';
import { NotMeasurable, tapOf, type Bench as Measuring } from '#core/measurements/tap-reading';
import { codeAt, scaled, tapScaling } from '#core/samples/tap-scaling';
import type { BurstRecord } from './check.ts';

export const burstSchema = z.object({
  tap: z.string(),
  startS: z.number(),
  intervalS: z.number(),
  actionSample: z.number().nullable(),
  /** Raw codes of single conversions; null where a block was lost. */
  codes: z.array(z.number().nullable()),
});
export type KeptBurst = z.infer<typeof burstSchema>;

export const keptBurst = ({ codes, ...burst }: BurstRecord): KeptBurst => ({
  ...burst,
  codes: Array.from(codes, (code) => (Number.isNaN(code) ? null : code)),
});
export const stretchOf = ({ startS, intervalS, codes, tap }: KeptBurst) => ({
  fromS: startS,
  toS: startS + intervalS * codes.length,
  taps: [tap],
});
/** A burst with an action in its tap's unit; refused when a part of it was lost or its action never fired. */
export function wholeWave(input: Measuring, burst: KeptBurst): Float64Array {
  const wave = wholeRecord(input, burst);
  if (burst.actionSample === null)
    throw new NotMeasurable(
      'The rig never told that the marked step was fired. Check the cable, then run again.',
    );
  return wave;
}
/** A burst without an action in its tap's unit. */
export function wholeRecord({ rig, samples }: Measuring, burst: KeptBurst): Float64Array {
  const scaling = tapScaling(rig, burst.tap);
  if (!scaling) throw new NotMeasurable(`This rig has no tap "${burst.tap}".`);
  if (burst.codes.includes(null))
    throw new NotMeasurable('A part of a burst was lost. Check the cable, then run again.');
  const { volts } = samples.supply(0, samples.latestS);
  return Float64Array.from(burst.codes, (code) => scaled(scaling, code ?? Number.NaN, volts));
}
export interface Lowest {
  readonly value: number;
  /** What may lie between the lowest sample and its neighbours, V. */
  readonly missedV: number;
}
/** The vertex of the parabola through the lowest sample and its neighbours stands for what lies between. */
export function lowestOf(wave: Float64Array): Lowest {
  const at = wave.reduce((least, v, k) => (v < wave[least] ? k : least), 0);
  const [before, here, after] = [wave[at - 1] ?? wave[at], wave[at], wave[at + 1] ?? wave[at]];
  const sides = [before - here, after - here];
  return { value: here, missedV: Math.min(...sides) / 2 };
}
export function dipQuantity(input: Measuring, { value, missedV }: Lowest): Quantity {
  const tap = tapOf(input.rig, 'railVoltage');
  const { volts } = input.samples.supply(0, input.samples.latestS);
  const share = pinShare(tap, value, false);
  const noiseV = tap.error.noiseLsb * codeStepV(input);
  const missed = typeB('missed', 'dip between two samples', 'computed from the neighbours');
  const noise = typeB('one sample', 'noise and rounding of a single sample', 'rig description');
  return uncertain(value - missedV / 2 + noiseV / 2, [
    ...gainLines(input.rig, tap, value, false),
    zeroLine(input.rig, tap, false),
    ...linearityLines(input.rig, tap, { code: codeAt(tap, value, volts), share, supplyV: volts }),
    [missed, rectangular(missedV / 2 + 0.003 * value)],
    [noise, rectangular(2 * noiseV)],
  ]);
}
/** One code of the rail's voltage, V. */
export function codeStepV({ rig, samples }: Measuring): number {
  const { scale } = tapOf(rig, 'railVoltage');
  const { volts } = samples.supply(0, samples.latestS);
  return scale.kind === 'linear' ? (volts * Math.abs(scale.unitsPerV)) / 1024 : Number.NaN;
}
