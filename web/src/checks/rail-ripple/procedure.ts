// SPDX-License-Identifier: MIT
// The rail at every conversion for a fifth of a second, first without load, then with one resistor of the load bank.
import type { Bench } from '../check.ts';
import { keptBurst } from '../burst-wave.ts';
import { railPlan } from '../rail-plan.ts';
import type { Evidence } from './evidence.ts';

/** 0.21 s: lines 4.7 Hz apart. */
const samples = 2048;
const settleS = 1.5;
/** 4.7 ohm; longer than the burst. */
const loaded = { mask: 2, seconds: 0.6, settleS: 0.1 } as const;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(railPlan, 'rail');
  bench.progress({ step: 1, of: 2, words: 'The rail without load, sample by sample.', leftS: 4 });
  await bench.wait(settleS);
  const free = await ripple(bench);
  bench.progress({ step: 2, of: 2, words: 'The rail under load, sample by sample.', leftS: 1 });
  await bench.load(loaded.mask, loaded.seconds);
  await bench.wait(loaded.settleS);
  return { bursts: [free, await ripple(bench)] };
}
async function ripple(bench: Bench): Promise<Evidence['bursts'][number]> {
  const plan = { tap: 'railVoltage', samples, action: { kind: 'none' }, atSample: 0 } as const;
  return keptBurst(await bench.burst(plan));
}
