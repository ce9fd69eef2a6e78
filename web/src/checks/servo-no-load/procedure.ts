// SPDX-License-Identifier: MIT
// The free horn is led slowly from side to side and back, below 20 degrees a second: with pulses every 20 ms a faster
// sweep comes in jerks that look like tight spots. Then it moves from side to side at full speed.
import type { Bench } from '../check.ts';
import { centreUs, railPlan } from '../rail-plan.ts';
import { keepStretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

export const sideUs = { low: 1100, high: 1900 } as const;
const sweepDegreesPerS = 18;
const movesEachWay = 3;
const moveS = 0.65;
const of = 4;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(railPlan);
  tell(bench, 1, 'The servo goes to one side.', 20);
  await bench.steer(sideUs.low, 1);
  const idle = await keepStretch(bench, 0.6, 0.6);
  const sweeps = await slowSweeps(bench);
  tell(bench, 4, 'The servo moves from side to side at full speed.', 5);
  const moves: Evidence['moves'] = [];
  for (let k = 0; k < 2 * movesEachWay; k++)
    moves.push({ longer: k % 2 === 0, stretch: await move(bench, k % 2 === 0) });
  await bench.steer(centreUs, 0.6);
  return { idle, sweeps, moves };
}
type SweepBench = Pick<Bench, 'car' | 'now' | 'progress' | 'steer' | 'wait'>;
/** There and back, of a servo that stands at the side of shorter pulses. */
export async function slowSweeps(bench: SweepBench): Promise<Evidence['sweeps']> {
  const sweeps: Evidence['sweeps'] = [];
  for (const [step, longer] of [true, false].entries()) {
    tell(bench, 2 + step, 'The servo is led slowly along its travel.', 14 - 5 * step);
    sweeps.push({ longer, stretch: await sweep(bench, longer) });
    await bench.wait(0.4);
  }
  return sweeps;
}
const endOf = (longer: boolean): number => (longer ? sideUs.high : sideUs.low);

async function sweep(bench: SweepBench, longer: boolean) {
  const degrees = (sideUs.high - sideUs.low) * bench.car.servo.degreesPerUs;
  const fromS = bench.now();
  await bench.steer(endOf(longer), degrees / sweepDegreesPerS);
  return { fromS, toS: bench.now() };
}
async function move(bench: Bench, longer: boolean) {
  const fromS = bench.now();
  await bench.steer(endOf(longer), 0);
  await bench.wait(moveS);
  return { fromS, toS: bench.now() };
}
function tell(bench: Pick<Bench, 'progress'>, step: number, words: string, leftS: number): void {
  bench.progress({ step, of, words, leftS });
}
