// SPDX-License-Identifier: MIT
// One reading of the meter beside the means of all taps that lie on the same place, told as it is taken. A reading that
// no tap could be near to is asked for again. It computes nothing but means.
import { pointOf, type CalibrationPoint } from '#core/calibration/line-calibration';
import { requireNearTaps } from '#core/calibration/point-checks';
import { tapOf, type Stretch } from '#core/measurements/tap-reading';
import type { RunBench } from '../bench.ts';
import { readMeter, type MeterQuestion } from './calibration-hands.ts';
import type { CalibrationWish } from './calibration-wish.ts';
import { tapMean } from './tap-mean.ts';

export interface MeteredStretch {
  readonly question: Omit<MeterQuestion, 'refused'>;
  readonly stretch: Stretch;
  /** By tap; each gets its point. */
  readonly points: ReadonlyMap<string, CalibrationPoint[]>;
}
export async function meteredPoints(
  bench: RunBench,
  wish: CalibrationWish,
  { question, stretch, points }: MeteredStretch,
): Promise<void> {
  const { rig } = bench;
  const means = [...points.keys()].map((id) => ({ tap: tapOf(rig, id), ...tapMean(bench, id, stretch) }));
  const pointsAt = (meter: number) =>
    means.map(({ tap, shown, u }) => ({ tap, point: pointOf(tap, wish.meter, { shown, shownU: u, meter }) }));
  const near = (value: number) => requireNearTaps(rig.descriptor, pointsAt(value));
  const meter = await bench.guard(() => readMeter(wish, question, near));
  for (const { tap, point } of pointsAt(meter)) {
    points.get(tap.id)?.push(point);
    wish.took?.(tap.id, point);
  }
}
