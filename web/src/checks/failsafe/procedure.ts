// SPDX-License-Identifier: MIT
// The throttle channel at rest, at full and half throttle; then the transmitter goes off while the trigger is held, and
// comes on again while nobody touches it. The motor gets none of these pulses.
import type { Bench } from '../check.ts';
import { powerTheReceiver, unpowerTheReceiver } from '../receiver-power.ts';
import { keepStretch, type Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

const stepsOfAll = 6;
const settleS = 0.06;
const heardS = 0.5;
/** How long a receiver is watched after the loss, and after the return, s. */
const lossS = 3;
const comebackS = 3;

export async function procedure(bench: Bench): Promise<Evidence> {
  tell(bench, 1, 'Waiting for the receiver.', 15);
  if (!(await powerTheReceiver(bench))) return { powered: false, known: null };
  await bench.capture('receiver2');
  const rest = await heardAt(bench, 2, 'Hands off: wheel and trigger at rest.');
  const full = await heardAt(bench, 3, 'Hold the trigger fully pulled, confirm, and keep holding.');
  const half = await heardAt(bench, 4, 'Hold the trigger half pulled, confirm, and keep holding.');
  const off = 'Still holding the trigger: turn the transmitter off, and confirm at that very moment.';
  const { answeredS: lostS, stretch: loss } = await through(bench, 5, off, lossS);
  const on =
    'Hands off: wheel and trigger at rest. Then turn the transmitter on, confirm at once, and do not touch the trigger.';
  const { stretch: comeback } = await through(bench, 6, on, comebackS);
  await unpowerTheReceiver(bench);
  return { powered: true, known: { rest, full, half, loss, comeback, lostS } };
}
async function heardAt(bench: Bench, step: number, words: string): Promise<Stretch> {
  tell(bench, step, words, 12 - step);
  await bench.ask(words);
  return keepStretch(bench, settleS, heardS);
}
/** A stretch that begins with the question and ends `seconds` after its answer. */
async function through(bench: Bench, step: number, words: string, seconds: number) {
  tell(bench, step, words, 20 - 3 * step + seconds);
  const fromS = bench.now();
  await bench.ask(words);
  const answeredS = bench.now();
  bench.mark(step === 5 ? 'transmitter off' : 'transmitter on');
  await bench.wait(seconds);
  return { answeredS, stretch: { fromS, toS: bench.now() } };
}
function tell(bench: Bench, step: number, words: string, leftS: number): void {
  bench.progress({ step, of: stepsOfAll, words, leftS });
}
