// SPDX-License-Identifier: MIT
// The rail at rest, then the load bank in full a few times, for the resistance of pack and leads behind it.
import type { Bench, ScanPlan } from '../check.ts';
import { keepStretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

const plan: ScanPlan = {
  fast: ['railVoltage', 'controllerVoltage', 'packVoltage', 'packCurrentNarrow'],
  slow: 'multiplexer',
};
const allLoads = 7;
const loadS = 0.3;
const stepsWanted = 3;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(plan, 'rail');
  bench.progress({ step: 1, of: 2, words: 'The rail at rest.', leftS: 8 });
  const rest = await keepStretch(bench, 1.5, 1);
  const steps: Evidence['steps'] = [];
  for (let k = 0; k < stepsWanted; k++) {
    bench.progress({ step: 2, of: 2, words: 'The load bank, for the sag of the pack.', leftS: 6 - 2 * k });
    await bench.load(allLoads, loadS);
    const loaded = await keepStretch(bench, 0.06, 0.2);
    steps.push({ loaded, free: await keepStretch(bench, 0.3, 0.3) });
  }
  return { rest, steps };
}
