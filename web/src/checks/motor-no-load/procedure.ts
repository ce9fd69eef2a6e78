// SPDX-License-Identifier: MIT
// Neutral, a small opening (grown where the motor turns slowly) with the fail-safe test, a short warm-up, four throttle steps, neutral again.
// Steps are ramped so that the spin-up stays far below what the wide current tap can hold.
import type { SampleStore } from '#core/samples/sample-store';
import type { Bench, ScanPlan } from '../check.ts';
import { keepStretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

const plan: ScanPlan = {
  fast: ['controllerVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'],
  slow: 'multiplexer',
};
/** Per cent. The rig allows 30 until the fail-safe test is passed, and trips above 15 where no Hall edge comes. */
const openings = { first: 12, step: 2, blind: 14, most: 30 } as const;
/** In half a second: 20 ms from edge to edge, where the rig calls 30 ms a motor that does not turn. */
const briskEdges = 25;
const throttles = [0.25, 0.5, 0.75, 1] as const;
const stepsOfAll = throttles.length + 3;
/** Longest time a controller may take to notice that the pulses stopped, s. */
export const failSafeMaxS = 0.5;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(plan);
  tell(bench, 1, 'What the controller draws at neutral.');
  const idle = await keepStretch(bench, 0.1, 1);
  tell(bench, 2, 'A little throttle, then the pulses stop on purpose.');
  const opened = await open(bench);
  if (!opened.turned) return { ...opened, failSafeS: null, idle, steps: [] };
  await bench.wait(0.8);
  const failSafeS = await bench.failSafeTest(0.7);
  if (failSafeS === null || failSafeS > failSafeMaxS) return { ...opened, failSafeS, idle, steps: [] };
  return { ...opened, failSafeS, idle, steps: await spin(bench) };
}
/** Opens by steps until the motor turns fast enough to be seen slowing. */
async function open(bench: Bench): Promise<Pick<Evidence, 'turned' | 'opening'>> {
  for (let perCent = openings.first; ; perCent += openings.step) {
    const opening = perCent / 100;
    await bench.throttle(opening, 0.3);
    if (await bench.waitFor((samples) => edgesLately(samples, bench.now()) >= briskEdges, 1.2))
      return { turned: true, opening };
    const seen = edgesLately(bench.samples, bench.now()) > 0;
    if (perCent + openings.step > (seen ? openings.most : openings.blind)) return { turned: false, opening };
  }
}
const edgesLately = (samples: SampleStore, nowS: number): number => samples.edges(nowS - 0.5, nowS).length;
async function spin(bench: Bench): Promise<Evidence['steps']> {
  tell(bench, 3, 'Warming up at half throttle.');
  await bench.wait(0.6);
  await bench.throttle(0.5, 0.6);
  await bench.wait(2.5);
  const steps: Evidence['steps'] = [];
  for (const [index, throttle] of throttles.entries()) {
    tell(
      bench,
      4 + index,
      throttle === 1 ? 'Full throttle, letting it settle.' : `${throttle * 100} % throttle.`,
    );
    bench.mark(`${throttle * 100} %`);
    await bench.throttle(throttle, 0.4);
    steps.push({ throttle, stretch: await keepStretch(bench, 1.2, throttle === 1 ? 1.6 : 1) });
  }
  await bench.throttle(0, 0.3);
  bench.mark('neutral');
  return steps;
}
function tell(bench: Bench, step: number, words: string): void {
  bench.progress({ step, of: stepsOfAll, words, leftS: Math.max(1, (stepsOfAll - step + 1) * 2.6) });
}
