// SPDX-License-Identifier: MIT
// Points of the current taps: the zero while nothing can flow, then steps of the load bank with the meter in series.
// The bank can't carry its steps for long, so the meter holds its greatest reading. It computes nothing but means.
import { reasonCode } from '#protocol/codes';
import type { ScanPlan } from '#checks/check';
import { keepStretch } from '#checks/stretch';
import { zeroPoint, type CalibrationPoint } from '#core/calibration/line-calibration';
import { quietStretch, type Stretch } from '#core/measurements/tap-reading';
import type { RunBench } from '../bench.ts';
import { RefusedError } from '../rig-error.ts';
import type { MeterPlace } from './calibration-hands.ts';
import type { CalibrationWish } from './calibration-wish.ts';
import { meteredPoints } from './metered-points.ts';
import { tapMean } from './tap-mean.ts';
import type { PointsByTap } from './voltage-points.ts';

/** 10, 4.7, 2.2 ohm, and the latter two together. */
const masks = [1, 2, 4, 6] as const;
const settleS = 0.15;
/** A hand-held meter shows a new value two to four times a second (common practice, no source). */
const shortestLoadS = 0.7;
const longestLoadS = 2;
/** What the bank of the reference board takes in one go, less a tenth for what the rig reads differently. */
const bankJ = 27;
const plan: ScanPlan = {
  fast: ['packCurrentNarrow', 'packCurrentWide', 'railVoltage', 'railCurrent'],
  slow: 'multiplexer',
};
export interface Circuit {
  readonly place: MeterPlace;
  readonly wiring: string;
  readonly taps: readonly string[];
}
const rest =
  'Plug pack, speed controller and rail adapter; leave motor and servo unplugged. Switch the controller on.';
export const circuits: readonly Circuit[] = [
  {
    place: 'packCurrent',
    wiring: `Put the meter on its 10 A range in series with the positive lead of the pack. ${rest}`,
    taps: ['packCurrentNarrow', 'packCurrentWide'],
  },
  {
    place: 'railCurrent',
    wiring: `Put the meter on its 10 A range in series with the positive lead of the rail adapter. ${rest}`,
    taps: ['railCurrent'],
  },
];
export async function currentPoints(
  bench: RunBench,
  wish: CalibrationWish,
  { place, wiring }: Circuit,
  taps: readonly string[],
): Promise<PointsByTap> {
  await bench.guard(() => wish.hands.act({ words: wiring, after: 'goes live', taps }));
  await bench.powerUp(plan);
  const quiet = quietStretch(bench.samples);
  const points = new Map(taps.map((id): [string, CalibrationPoint[]] => [id, [zeroAt(bench, id, quiet)]]));
  points.forEach(([zero], id) => wish.took?.(id, zero));
  for (const mask of masks) {
    const stretch = await loadStretch(bench, wish, { mask, taps });
    if (!stretch) continue;
    const words = 'Enter the greatest reading that the meter holds, in A.';
    const question = { words, quantity: 'current', place, taps } as const;
    await meteredPoints(bench, wish, { question, stretch, points });
  }
  return points;
}
function zeroAt(bench: RunBench, id: string, quiet: Stretch): CalibrationPoint {
  const { shown, u } = tapMean(bench, id, quiet);
  return zeroPoint(shown, u);
}
/** Null where the bank can't carry the step long enough to be read. */
async function loadStretch(
  bench: RunBench,
  wish: CalibrationWish,
  { mask, taps }: { readonly mask: number; readonly taps: readonly string[] },
): Promise<Stretch | null> {
  const seconds = loadSeconds(bench, mask);
  if (seconds < shortestLoadS) return null;
  const ohms = ohmsOf(bench, mask);
  await bench.guard(() =>
    wish.hands.act({
      words: `Let the meter hold its greatest reading (MAX), clear it, then go on: ${ohms} come on for ${seconds.toFixed(1)} s.`,
      after: 'live',
      taps,
    }),
  );
  try {
    await bench.load(mask, seconds);
  } catch (error) {
    if (error instanceof RefusedError && error.reason === reasonCode.loadHot) return null;
    throw error;
  }
  const stretch = await keepStretch(bench, settleS, seconds - settleS - 0.05);
  await bench.wait(0.4);
  return stretch;
}
function loadSeconds({ rig, samples }: RunBench, mask: number): number {
  const railV = samples.latest('railVoltage')?.value ?? rig.descriptor.nominalSupplyV;
  const heatW = railV ** 2 * conductance(rig.descriptor.loadsOhm, mask);
  return Math.min(longestLoadS, bankJ / heatW);
}
const conductance = (ohms: readonly number[], mask: number): number =>
  ohms.reduce((sum, ohm, bit) => sum + (mask & (1 << bit) ? 1 / ohm : 0), 0);
const ohmsOf = ({ rig }: RunBench, mask: number): string =>
  rig.descriptor.loadsOhm
    .filter((_, bit) => mask & (1 << bit))
    .map((ohm) => `${ohm} ohm`)
    .join(' and ');
