// SPDX-License-Identifier: MIT
// The horn free at centre for two seconds; then the pulse goes slowly up and down across its dead band, each turn at
// another width, so that the turns meet the servo's own small steps at all their phases.
import type { Bench } from '../check.ts';
import { centreUs, railPlan } from '../rail-plan.ts';
import { keepStretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

/** Wider than the widest dead band twice over that is told apart. */
const sideUs = 40;
/** How much further each turn goes than the one before. */
const furtherUs = 0.7;
const turns = 7;
export const usPerS = 40;
const restS = 2;
const of = 2 + turns;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(railPlan);
  const rest = await restAtCentre(bench);
  const ramps: Evidence['ramps'] = [];
  let fromUs = centreUs;
  for (let turn = 0; turn < turns; turn++) {
    tell(bench, 3 + turn, 'The pulse moves slowly across the dead band.');
    const toUs = centreUs + (turn % 2 === 0 ? 1 : -1) * (sideUs + furtherUs * turn);
    ramps.push(await ramp(bench, fromUs, toUs));
    fromUs = toUs;
  }
  await bench.steer(centreUs, 0.3);
  return { rest, ramps };
}
/** The centre is come to slowly and from one side, then kept. */
export async function restAtCentre(
  bench: Pick<Bench, 'now' | 'progress' | 'steer' | 'wait'>,
): Promise<Evidence['rest']> {
  tell(bench, 1, 'The servo goes to its centre.');
  await bench.steer(centreUs - sideUs, 0.3);
  await bench.wait(0.3);
  await bench.steer(centreUs, 0.3);
  tell(bench, 2, 'The servo rests at its centre.');
  return keepStretch(bench, 0.8, restS);
}
async function ramp(bench: Bench, fromUs: number, toUs: number) {
  const fromS = bench.now();
  await bench.steer(toUs, Math.abs(toUs - fromUs) / usPerS);
  return { fromS, toS: bench.now() };
}
function tell(bench: Pick<Bench, 'progress'>, step: number, words: string): void {
  bench.progress({ step, of, words, leftS: 2 * (of - step) + 1 });
}
