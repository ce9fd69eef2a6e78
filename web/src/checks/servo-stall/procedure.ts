// SPDX-License-Identifier: MIT
// The horn rests against a block from the start (driven into one from afar, gears break). The commanded offset
// grows until the current stops growing; at most 250 ms a push, rests between.
import type { Bench } from '../check.ts';
import { centreUs, railPlan } from '../rail-plan.ts';
import { keepStretch, type Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';
import { stillGrowingShare } from './stall-series.ts';

export const offsetsDegrees = [2, 5, 10, 20] as const;
/** The command takes up to a frame of 20 ms to reach the servo, so the push itself stays within 250 ms. */
const pushS = 0.24;
const restS = 10;
const lookS = 0.05;
/** Less than this is no push yet. */
const leastA = 0.5;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(railPlan);
  tell(bench, 1, 'The servo goes to its centre.');
  await bench.steer(centreUs, 0.3);
  await bench.wait(0.5);
  await bench.ask(
    'Rest the horn against the block, on the side of longer pulses, and hold the block firmly.',
  );
  const idle = await keepStretch(bench, 0.3, 0.5);
  const pushes: Evidence['pushes'] = [];
  for (const [index, degrees] of offsetsDegrees.entries()) {
    if (index > 0) await rest(bench, index);
    tell(bench, index + 2, `Pushing, ${degrees} degrees beyond the block.`);
    pushes.push({ degrees, stretch: await push(bench, degrees) });
    if (!grows(bench, pushes)) break;
  }
  return { idle, pushes };
}
/** With the bridge fully on, more offset brings no more current, only heat. */
function grows(bench: Bench, pushes: Evidence['pushes']): boolean {
  const [before, last] = pushes.slice(-2).map(({ stretch }) => endCurrent(bench, stretch));
  return last === undefined || !(last > leastA) || last > stillGrowingShare * before;
}
/** Mean of a push's last part: whatever starts softly has come up by then. Plain, as the rest of the run hangs on it. */
function endCurrent({ samples }: Bench, { toS }: Stretch): number {
  const { value } = samples.series('railCurrent', toS - lookS, toS);
  return value.reduce((sum, amps) => sum + amps, 0) / value.length;
}
async function push(bench: Bench, degrees: number) {
  bench.mark(`${degrees} degrees`);
  const fromS = bench.now();
  await bench.steer(centreUs + degrees / bench.car.servo.degreesPerUs, 0);
  await bench.wait(pushS);
  const toS = bench.now();
  await bench.steer(centreUs, 0);
  return { fromS, toS };
}
async function rest(bench: Bench, index: number): Promise<void> {
  tell(bench, index + 1, 'The servo rests and cools.');
  await bench.wait(restS);
}
function tell(bench: Bench, step: number, words: string): void {
  const left = (offsetsDegrees.length + 2 - step) * restS;
  bench.progress({ step, of: offsetsDegrees.length + 1, words, leftS: Math.max(1, left) });
}
