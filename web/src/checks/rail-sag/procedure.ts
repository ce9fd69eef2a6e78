// SPDX-License-Identifier: MIT
// All eight combinations of the load bank, twice; then bursts on the rail with the greatest load step and with a
// full servo move fired by the rig itself; slow ways back, so that only the marked moves count.
import type { Bench } from '../check.ts';
import { keptBurst, type KeptBurst } from '../burst-wave.ts';
import { railPlan } from '../rail-plan.ts';
import { keepStretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

const masks = [1, 2, 3, 4, 5, 6, 7] as const;
const passes = 2;
const loadS = 0.24;
const burstsOfEach = 3;
const sides = { low: 1150, high: 1850, centre: 1500 } as const;
const stepsOfAll = 4;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(railPlan);
  tell(bench, 1, 'The rail at rest.', 25);
  const rest = await keepStretch(bench, 0.2, 0.6);
  const steps: Evidence['steps'] = [];
  for (let pass = 0; pass < passes; pass++) {
    tell(bench, 2, `Load steps, all combinations, pass ${pass + 1} of ${passes}.`, 20 - 8 * pass);
    for (const mask of masks) steps.push(await loadStep(bench, mask));
  }
  tell(bench, 3, 'The greatest load step, sample by sample.', 8);
  const loadBursts: KeptBurst[] = [];
  for (let k = 0; k < burstsOfEach; k++) loadBursts.push(await loadBurst(bench, k));
  tell(bench, 4, 'The servo from side to side, sample by sample.', 5);
  return { rest, steps, loadBursts, servoBursts: await servoBursts(bench) };
}
async function loadStep(bench: Bench, mask: number): Promise<Evidence['steps'][number]> {
  await bench.load(mask, loadS);
  const loaded = await keepStretch(bench, 0.04, 0.16);
  const free = await keepStretch(bench, 0.12, 0.12);
  return { mask, loaded, free };
}
async function loadBurst(bench: Bench, index: number): Promise<KeptBurst> {
  bench.mark('greatest load step');
  // The bank has to have room for the step; a short load tells, and waits for it.
  await bench.load(7, 0.02);
  await bench.wait(1.5);
  const action = { kind: 'load', mask: 7, ms: 40 } as const;
  return keptBurst(await bench.burst({ tap: 'railVoltage', samples: 624, action, atSample: 96 + 7 * index }));
}
async function servoBursts(bench: Bench): Promise<KeptBurst[]> {
  const bursts: KeptBurst[] = [];
  await bench.steer(sides.low, 0.8);
  for (const widthUs of [sides.high, sides.low]) {
    await bench.wait(0.4);
    bench.mark('servo move');
    const action = { kind: 'steering', widthUs, ms: 600 } as const;
    bursts.push(keptBurst(await bench.burst({ tap: 'railVoltage', samples: 3120, action, atSample: 96 })));
    await bench.steer(widthUs, 0);
  }
  await bench.steer(sides.centre, 0.8);
  return bursts;
}
function tell(bench: Bench, step: number, words: string, leftS: number): void {
  bench.progress({ step, of: stepsOfAll, words, leftS });
}
