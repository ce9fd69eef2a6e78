// SPDX-License-Identifier: MIT
// Neutral, a small opening (grown where the motor turns slowly) with the fail-safe test, a short warm-up, four throttle
// steps, neutral again.
// Steps are ramped so that the spin-up stays far below what the wide current tap can hold.
import type { Bench, ScanPlan } from '../check.ts';
import { mayOpen, provenSpin } from '../proven-spin.ts';
import { keepStretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

const plan: ScanPlan = {
  fast: ['controllerVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'],
  slow: 'multiplexer',
};
const throttles = [0.25, 0.5, 0.75, 1] as const;
const stepsOfAll = throttles.length + 3;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(plan);
  tell(bench, 1, 'What the controller draws at neutral.');
  const idle = await keepStretch(bench, 0.1, 1);
  tell(bench, 2, 'A little throttle, then the pulses stop on purpose.');
  const proven = await provenSpin(bench);
  return { ...proven, idle, steps: mayOpen(proven) ? await spin(bench) : [] };
}
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
