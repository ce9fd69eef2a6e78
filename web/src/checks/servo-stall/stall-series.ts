// SPDX-License-Identifier: MIT
// One push as columns: rail voltage and current from the moment the current rose. Plain values, no budget.
import type { SampleStore } from '#core/samples/sample-store';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { Stretch } from '../stretch.ts';

export interface StallSeries {
  /** When the current rose, rig seconds. */
  readonly onsetS: number;
  readonly endS: number;
  readonly peakA: number;
  readonly timeS: Float64Array;
  readonly amps: Float64Array;
  meanA(stretch: Stretch): number;
  /** Seconds since onset against ohms at the servo's plug. */
  ohms(fromS: number, toS: number): [number, number][];
}
/** Growth beyond this from one offset to the next: the bridge was not fully on. */
export const stillGrowingShare = 1.08;
/** The rise counts from this share of the greatest current. */
const riseShare = 0.3;
const shuntOhm = 0.01;

export function seriesOf(samples: SampleStore, { fromS, toS }: Stretch): StallSeries {
  const current = samples.series('railCurrent', fromS, toS);
  const voltage = samples.series('railVoltage', fromS, toS);
  if (current.lost > 0)
    throw new NotMeasurable(`${current.lost} scans were lost in a push. Check the cable, then run again.`);
  if (current.clipped > 0)
    throw new NotMeasurable(
      'The rail current tap was at the end of its range in a push. Use a rig with a wider tap.',
    );
  const { timeS, value: amps } = current;
  const peakA = amps.reduce((most, i) => Math.max(most, i), 0);
  const rise = amps.findIndex((i) => i > riseShare * peakA);
  const onsetS = timeS[Math.max(0, rise)] ?? fromS;
  const inside = (t: number, from: number, to: number) => t >= from && t < to;
  return {
    onsetS,
    endS: toS,
    peakA,
    timeS,
    amps,
    meanA: (stretch) => {
      const some = amps.filter((_, k) => inside(timeS[k], stretch.fromS, stretch.toS));
      return some.reduce((sum, i) => sum + i, 0) / some.length;
    },
    ohms: (from, to) =>
      Array.from(timeS)
        .map((t, k): [number, number] => [t - onsetS, voltage.value[k] / amps[k] - shuntOhm])
        .filter(([t]) => inside(t + onsetS, from, to)),
  };
}
/** Mean currents of consecutive parts of `lengthS`, from `skipS` after the rise to the end. */
export function partMeans(series: StallSeries, skipS: number, lengthS: number): number[] {
  const startS = series.onsetS + skipS;
  const parts = Math.floor((series.endS - startS) / lengthS);
  return Array.from({ length: Math.max(0, parts) }, (_, k) =>
    series.meanA({ fromS: startS + k * lengthS, toS: startS + (k + 1) * lengthS }),
  ).filter(Number.isFinite);
}
