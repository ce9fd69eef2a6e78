// SPDX-License-Identifier: MIT
// The resistor of the limited feed by the rig's own taps: emptied capacitor, then every scan while the feed fills it;
// or by the meter. It commands and takes columns; what they say is computed elsewhere.
import { feedFromMeter, feedFromTaps } from '#core/calibration/limited-feed';
import type { CalibrationLine } from '#core/calibration/line-calibration';
import { readingOf } from '#core/calibration/meter';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { RigDescription } from '#core/samples/rig-description';
import { feedLevelCode, switchCode } from '#protocol/codes';
import type { ScanPlan } from '#checks/check';
import type { RunBench } from '../bench.ts';
import { startStream, untilStopProven } from '../power-up.ts';
import { readMeter } from './calibration-hands.ts';
import type { CalibrationWish } from './calibration-wish.ts';
import { fillOf, type Fill } from './feed-fill.ts';
import { relativeGainU } from './tap-mean.ts';

const plan: ScanPlan = {
  fast: ['packVoltage', 'controllerVoltage', 'packCurrentNarrow', 'packCurrentWide'],
  slow: 'multiplexer',
};
const emptyV = 0.4;
const emptyWithinS = 15;
const fillS = 0.25;

export async function feedLine(
  bench: RunBench,
  wish: CalibrationWish,
  counted: RigDescription,
): Promise<CalibrationLine> {
  const declaredOhm = bench.rig.descriptor.limitedFeedOhm;
  const label = { date: wish.today, origin: wish.feedBy };
  if (wish.feedBy === 'meter') {
    const words = `With the pack unplugged, put the meter across the resistor of the limited feed (${declaredOhm} ohm) and enter what it shows, in ohm.`;
    const ohm = await bench.guard(() =>
      readMeter(wish, { words, quantity: 'resistance', place: 'limitedFeed', taps: [] }),
    );
    return feedFromMeter(declaredOhm, readingOf(wish.meter, 'resistance', ohm), label);
  }
  const { points, tiltU } = await fill(bench, wish, counted);
  const gains = ['packCurrentNarrow', 'controllerVoltage'].map((id) => relativeGainU(counted, id));
  return feedFromTaps(declaredOhm, points, Math.hypot(tiltU, ...gains), label);
}
async function fill(bench: RunBench, { hands }: CalibrationWish, counted: RigDescription): Promise<Fill> {
  await bench.guard(() =>
    hands.act({
      words: 'Plug pack and speed controller; leave motor and servo unplugged.',
      after: 'goes live',
      taps: ['packVoltage', 'controllerVoltage', 'packCurrentNarrow'],
    }),
  );
  await startStream(bench);
  await untilStopProven(bench);
  await bench.scan(plan);
  await bench.wait(0.2);
  await bench.command({ type: 'switch', which: switchCode.bleeder, on: 1, ms: 0 });
  const empty = () => (bench.samples.latest('controllerVoltage')?.value ?? 99) < emptyV;
  if (!(await bench.waitFor(empty, emptyWithinS)))
    throw new NotMeasurable(
      'The capacitor of the controller did not empty. Is something else feeding it? Unplug it and start again.',
    );
  await bench.command({ type: 'switch', which: switchCode.bleeder, on: 0, ms: 0 });
  await bench.guard(() => bench.session.goLive());
  const fromS = bench.now();
  await bench.command({ type: 'feed', level: feedLevelCode.limited });
  await bench.wait(fillS);
  return fillOf(bench.samples, bench.rig, counted, { fromS, toS: bench.now() });
}
