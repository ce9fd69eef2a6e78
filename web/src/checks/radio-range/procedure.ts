// SPDX-License-Identifier: MIT
// The driver holds wheel and trigger in six positions, each heard on both channels of the receiver one after the other.
import type { Bench } from '../check.ts';
import { powerTheReceiver, unpowerTheReceiver } from '../receiver-power.ts';
import { keepStretch } from '../stretch.ts';
import type { Evidence, Position } from './evidence.ts';

const asked: readonly (readonly [Position, string])[] = [
  ['rest', 'Hands off: wheel and trigger at rest.'],
  ['left', 'Hold the wheel fully left, confirm, and keep holding.'],
  ['right', 'Hold the wheel fully right, confirm, and keep holding.'],
  ['full', 'Wheel centred. Hold the trigger fully pulled, full throttle; confirm, and keep holding.'],
  ['brake', 'Hold the trigger fully pushed, full brake; confirm, and keep holding.'],
  ['rest again', 'Hands off again: wheel and trigger at rest.'],
];
const settleS = 0.06;
const heardS = 0.6;
const eachS = 2 * (settleS + heardS);

export async function procedure(bench: Bench): Promise<Evidence> {
  tell(bench, 0, 'Waiting for the receiver.');
  if (!(await powerTheReceiver(bench))) return { powered: false, held: [] };
  const held: Evidence['held'] = [];
  for (const [index, [position, words]] of asked.entries()) {
    tell(bench, index + 1, words);
    await bench.ask(words);
    bench.mark(position);
    held.push({ position, channels: [await heard(bench, 'receiver1'), await heard(bench, 'receiver2')] });
  }
  await unpowerTheReceiver(bench);
  return { powered: true, held };
}
async function heard(bench: Bench, channel: 'receiver1' | 'receiver2') {
  await bench.capture(channel);
  return keepStretch(bench, settleS, heardS);
}
function tell(bench: Bench, step: number, words: string): void {
  bench.progress({ step: step + 1, of: asked.length + 1, words, leftS: eachS * (asked.length - step) + 2 });
}
