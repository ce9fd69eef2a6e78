// SPDX-License-Identifier: MIT
// The mean of a tap over a stretch as a quantity with its whole budget, or the sentence why there is none:
// missing tap, gap, clipping, too few samples, reference never read. It knows no check.
import type { RigDescription, Tap } from '../samples/rig-description.ts';
import type { SampleStore } from '../samples/sample-store.ts';
import { outputBits } from '../samples/scan-block.ts';
import { codeAt } from '../samples/tap-scaling.ts';
import { difference, uncertain, type Quantity } from './quantity.ts';
import { steadyMean, type SteadyMean } from './steady-mean.ts';
import {
  gainLines,
  linearityLines,
  pinShare,
  quantisationLine,
  typeA,
  zeroLine,
  type Line,
} from './tap-errors.ts';
import { thermistorLines } from './thermistor-errors.ts';

/** Thrown inside an analysis; the sentence becomes the reason of every result that hangs on it. */
export class NotMeasurable extends Error {}

export interface Bench {
  readonly samples: SampleStore;
  readonly rig: RigDescription;
}
export interface Stretch {
  readonly fromS: number;
  readonly toS: number;
}
/** More clipped values than this and the mean is not of the whole. */
const clippedAtMost = 0.01;

export function tapOf(rig: RigDescription, id: string): Tap {
  const tap = rig.descriptor.taps.find((known) => known.id === id);
  if (!tap) throw new NotMeasurable(`This rig has no tap "${id}". Use a rig that has it.`);
  return tap;
}
/** Statistics of a stretch, refused unless whole. */
export function steadyOf({ samples, rig }: Bench, id: string, { fromS, toS }: Stretch): SteadyMean {
  tapOf(rig, id);
  const series = samples.series(id, fromS, toS);
  const when = `between ${fromS.toFixed(2)} s and ${toS.toFixed(2)} s`;
  if (series.lost > 0)
    throw new NotMeasurable(`${series.lost} scans were lost ${when}. Check the cable and run again.`);
  const all = series.value.length + series.clipped;
  if (all > 0 && series.clipped > clippedAtMost * all)
    throw new NotMeasurable(`${id} was at the end of its range ${when}. Use a tap with a wider range.`);
  const found = steadyMean(series.value);
  if (!found)
    throw new NotMeasurable(`Only ${all} values of ${id} came ${when}, at least 32 are needed. Run again.`);
  return found;
}
/** Mean of a tap without a zero trim. */
export function reading(bench: Bench, id: string, stretch: Stretch): Quantity {
  return budgeted(bench, id, stretch, false);
}
/** Mean of a current tap, its own zero (see zeroOf) taken away: what is left of the offset is its drift. */
export function trimmedReading(bench: Bench, id: string, stretch: Stretch, zero: Quantity): Quantity {
  const value = budgeted(bench, id, stretch, true, zero.value);
  return difference(value, zero);
}
/** What a current tap shows while nothing can flow. Its gain errors fall out, non-linearity at that code stays. */
export function zeroOf(bench: Bench, id: string): Quantity {
  const tap = tapOf(bench.rig, id);
  const stretch = quietStretch(bench.samples);
  const found = steadyOf(bench, id, stretch);
  const { volts } = supplyOf(bench, stretch);
  return uncertain(found.mean, [
    [typeA(`zero ${id}`, `noise of the zero of ${id}`, found.dof), found.u],
    ...linearityLines(bench.rig, tap, { code: codeAt(tap, found.mean, volts), share: 0, supplyV: volts }),
    quantisationLine(tap, `zero ${id}`, found.sd * Math.SQRT2, volts),
  ]);
}
/** The start of the run while the feed is off: no current can flow through any tap. */
export function quietStretch(samples: SampleStore): Stretch {
  const { timeS, outputs } = samples.status(0, samples.latestS);
  const busy = outputBits.feedLimited | outputBits.feedFull | outputBits.loads;
  const on = outputs.findIndex((bits) => (bits & busy) !== 0);
  const toS = (on < 0 ? samples.latestS : timeS[on]) - 0.02;
  const fromS = Math.max(0.03, toS - 1.5);
  if (!(toS - fromS > 0.1))
    throw new NotMeasurable(
      'No stretch with the feed off was recorded, so the zero of the current taps is unknown. Run again.',
    );
  return { fromS, toS };
}
function supplyOf({ samples }: Bench, { fromS, toS }: Stretch) {
  const supply = samples.supply(fromS, toS);
  if (supply.readings === 0)
    throw new NotMeasurable(
      'The reference was never read, so no voltage can be told. Scan the multiplexer and run again.',
    );
  return supply;
}
function budgeted(bench: Bench, id: string, stretch: Stretch, trimmed: boolean, zero = 0): Quantity {
  const tap = tapOf(bench.rig, id);
  const found = steadyOf(bench, id, stretch);
  const supply = supplyOf(bench, stretch);
  const key = `${id} ${stretch.fromS.toFixed(4)}`;
  const value = found.mean - zero;
  const share = pinShare(tap, value, trimmed);
  const code = codeAt(tap, found.mean, supply.volts);
  const supplyNoise: Line = [
    typeA(
      `supply ${stretch.fromS.toFixed(4)}`,
      'noise of the reference readings',
      Math.max(1, supply.readings - 1),
    ),
    (share * supply.u) / supply.volts,
  ];
  return uncertain(found.mean, [
    ...scaleLines(bench.rig, tap, value, trimmed),
    ...linearityLines(bench.rig, tap, { code, share, supplyV: supply.volts }),
    quantisationLine(tap, key, sdOfOne(tap, found.sd), supply.volts, code),
    supplyNoise,
    [typeA(`noise ${key}`, `noise of ${id}`, found.dof), found.u],
  ]);
}
/** What turns codes into the tap's unit is off by: gain and zero, or a thermistor's curve. */
export const scaleLines = (rig: RigDescription, tap: Tap, value: number, trimmed: boolean): Line[] =>
  tap.scale.kind === 'ntc'
    ? thermistorLines(rig, tap, value)
    : [...gainLines(rig, tap, value, trimmed), zeroLine(rig, tap, trimmed)];
/** A value of the multiplexer is one conversion, all others the mean of two. */
const sdOfOne = ({ mux }: Tap, sd: number): number => (mux === undefined ? sd * Math.SQRT2 : sd);
