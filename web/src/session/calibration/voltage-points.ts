// SPDX-License-Identifier: MIT
// Points of the voltage taps: all their leads on one source while the rig is safe, once on one cell and once on
// the whole pack, the meter across the source. It computes nothing but means.
import { keepStretch } from '#checks/stretch';
import type { ScanPlan } from '#checks/check';
import { type CalibrationPoint } from '#core/calibration/line-calibration';
import type { RunBench } from '../bench.ts';
import type { CalibrationWish } from './calibration-wish.ts';
import { meteredPoints } from './metered-points.ts';
import { tapWords } from '#core/samples/tap-titles';

const settleS = 0.6;
const lengthS = 1.2;
const sources = ['one cell (3 to 4.2 V)', 'the whole pack (7 to 8.4 V)'] as const;
export const voltageTaps = ['packVoltage', 'controllerVoltage', 'railVoltage'] as const;
const plan: ScanPlan = {
  fast: ['packVoltage', 'controllerVoltage', 'railVoltage', 'packCurrentWide'],
  slow: 'multiplexer',
};
export type PointsByTap = ReadonlyMap<string, readonly CalibrationPoint[]>;

export async function voltagePoints(
  bench: RunBench,
  wish: CalibrationWish,
  taps: readonly string[],
): Promise<PointsByTap> {
  const points = new Map(taps.map((id): [string, CalibrationPoint[]] => [id, []]));
  await bench.scan(plan);
  await bench.command({ type: 'stream', on: 1 });
  const leads = taps.map(tapWords).join(', ');
  for (const source of sources) {
    await bench.guard(() =>
      wish.hands.act({
        words: `Unplug pack, speed controller and servo. Put the leads of ${leads} together on ${source}, plus to plus, with the ground lead on minus.`,
        after: 'safe',
        taps,
      }),
    );
    const stretch = await keepStretch(bench, settleS, lengthS);
    const words = 'Put the meter across the source and enter what it shows, in V.';
    const question = { words, quantity: 'voltage', place: 'source', taps } as const;
    await meteredPoints(bench, wish, { question, stretch, points });
  }
  return points;
}
