// SPDX-License-Identifier: MIT
// Thermistors in melting ice, or all together at one temperature, while the rig is safe. It computes means only.
import { keepStretch } from '#checks/stretch';
import {
  iceCalibration,
  togetherCalibration,
  type ThermistorReading,
} from '#core/calibration/thermistor-calibration';
import type { CalibrationLine } from '#core/calibration/line-calibration';
import { tapOf } from '#core/measurements/tap-reading';
import type { RunBench } from '../bench.ts';
import { powerPlan } from '../scan-list.ts';
import type { CalibrationWish } from './calibration-wish.ts';
import { tapMean } from './tap-mean.ts';
import { tapWords } from '#core/samples/tap-titles';

const lengthS = 1.5;
const wordsFor = {
  ice: (which: string) =>
    `Hold the thermistors of ${which} in a stirred mix of crushed ice and water, tips in the ice. Go on after three minutes.`,
  together: (which: string) =>
    `Wrap the thermistors of ${which} together in cloth, away from sun and draught. Go on after ten minutes.`,
} as const;

export async function thermistorLines(
  bench: RunBench,
  { taps, hands, thermistorsIn, today: date }: CalibrationWish,
): Promise<CalibrationLine[]> {
  await bench.scan(powerPlan);
  await bench.command({ type: 'stream', on: 1 });
  const which = taps.map(tapWords).join(', ');
  await bench.guard(() => hands.act({ words: wordsFor[thermistorsIn](which), after: 'safe', taps }));
  const stretch = await keepStretch(bench, 0.2, lengthS);
  const readings = taps.map((id): ThermistorReading => {
    const { shown, u } = tapMean(bench, id, stretch);
    return { tap: tapOf(bench.rig, id), shownC: shown, u };
  });
  const label = { date, origin: thermistorsIn };
  if (thermistorsIn === 'together') return togetherCalibration(readings, label);
  return readings.map((reading) => iceCalibration(reading, label));
}
