// SPDX-License-Identifier: MIT
// Streams the pack's taps for some seconds; nothing goes live, nothing is switched on.
import type { Bench, ScanPlan } from '../check.ts';
import { keepStretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

const plan: ScanPlan = {
  fast: ['packVoltage', 'controllerVoltage', 'railVoltage', 'packCurrentWide'],
  slow: 'multiplexer',
};
/** Each input of the multiplexer comes once in 7.5 ms: some 270 values. */
const restS = 2;

export async function procedure(bench: Bench): Promise<Evidence> {
  bench.progress({ step: 1, of: 1, words: 'The pack at rest.', leftS: restS });
  await bench.stream(plan);
  return { rest: await keepStretch(bench, 0.2, restS) };
}
