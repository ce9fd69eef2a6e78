// SPDX-License-Identifier: MIT
// The resistor of the limited feed by the rig's own taps: emptied capacitor, then every scan while the feed fills it;
// or by the meter. It commands and takes columns; what they say is computed elsewhere.
import { feedFromMeter, feedFromTaps } from '#core/calibration/limited-feed';
import type { CalibrationLine } from '#core/calibration/line-calibration';
import { readingOf } from '#core/calibration/meter';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { LinePoint } from '#core/measurements/york-fit';
import type { RigDescription } from '#core/samples/rig-description';
import { stepOf, tapScaling } from '#core/samples/tap-scaling';
import { feedLevelCode, switchCode } from '#protocol/codes';
import type { ScanPlan } from '#checks/check';
import type { RunBench } from '../bench.ts';
import { startStream, untilStopProven } from '../power-up.ts';
import { readMeter } from './calibration-hands.ts';
import type { CalibrationWish } from './calibration-wish.ts';
import { relativeGainU } from './tap-mean.ts';

const plan: ScanPlan = {
  fast: ['packVoltage', 'controllerVoltage', 'packCurrentNarrow', 'packCurrentWide'],
  slow: 'multiplexer',
};
const emptyV = 0.4;
const emptyWithinS = 15;
const fillS = 0.25;
/** Below this the diode in series bends the line; it is left out. */
const leastA = 0.15;

export async function feedLine(
  bench: RunBench,
  wish: CalibrationWish,
  counted: RigDescription,
): Promise<CalibrationLine> {
  const declaredOhm = bench.rig.descriptor.limitedFeedOhm;
  const label = { date: wish.today, origin: wish.feedBy };
  if (wish.feedBy === 'meter') {
    const words = `With the pack unplugged, put the meter across the resistor of the limited feed (${declaredOhm} ohm) and enter what it shows, in ohm.`;
    const ohm = await bench.guard(() => readMeter(wish, 'resistance', words, 'limitedFeed'));
    return feedFromMeter(declaredOhm, readingOf(wish.meter, 'resistance', ohm), label);
  }
  const gainU = Math.hypot(
    relativeGainU(counted, 'packCurrentNarrow'),
    relativeGainU(counted, 'controllerVoltage'),
  );
  return feedFromTaps(declaredOhm, await fillPoints(bench, wish, counted), gainU, label);
}
async function fillPoints(
  bench: RunBench,
  { hands }: CalibrationWish,
  counted: RigDescription,
): Promise<LinePoint[]> {
  await bench.guard(() =>
    hands.act('Plug pack and speed controller; leave motor and servo unplugged. Switch the controller off.'),
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
  return pointsOf(bench, counted, fromS, bench.now());
}
/** Volts across and amperes through, at the instants of the volts: the two are converted one after the other. */
function pointsOf(bench: RunBench, counted: RigDescription, fromS: number, toS: number): LinePoint[] {
  const series = (id: string) => bench.samples.series(id, fromS, toS);
  const [pack, controller, amps] = ['packVoltage', 'controllerVoltage', 'packCurrentNarrow'].map(series);
  const zero = bench.samples.series('packCurrentNarrow', fromS - 0.15, fromS - 0.01).value;
  const zeroA = zero.reduce((sum, a) => sum + a, 0) / zero.length;
  const u = (id: string) => noiseOf(counted, id);
  const gain = (id: string) => (tapScaling(counted, id)?.gain ?? 1) / (tapScaling(bench.rig, id)?.gain ?? 1);
  const [gainV, gainA] = [gain('controllerVoltage'), gain('packCurrentNarrow')];
  return Array.from(pack.timeS, (atS, i): LinePoint | null => {
    const a = at(amps.timeS, amps.value, atS);
    const v = pack.value[i] - at(controller.timeS, controller.value, atS);
    if (!(a - zeroA > leastA) || !Number.isFinite(v)) return null;
    return {
      x: (a - zeroA) * gainA,
      y: v * gainV,
      ux: u('packCurrentNarrow'),
      uy: Math.SQRT2 * u('packVoltage'),
    };
  }).filter((point) => point !== null);
}
/** In a straight line between neighbours; NaN outside. */
function at(timeS: Float64Array, value: Float64Array, atS: number): number {
  const after = timeS.findIndex((t) => t >= atS);
  if (after < 0) return Number.NaN;
  if (timeS[after] === atS) return value[after];
  if (after === 0) return Number.NaN;
  const part = (atS - timeS[after - 1]) / (timeS[after] - timeS[after - 1]);
  return value[after - 1] + part * (value[after] - value[after - 1]);
}
/** Noise of a pair of conversions and non-linearity of its codes' own. */
function noiseOf({ descriptor }: RigDescription, id: string): number {
  const tap = descriptor.taps.find((known) => known.id === id);
  if (!tap) return Number.NaN;
  const { noiseLsb, inlLsb } = tap.error;
  return (
    Math.hypot(noiseLsb / Math.SQRT2, (0.55 * inlLsb) / Math.sqrt(3)) * stepOf(tap, descriptor.nominalSupplyV)
  );
}
