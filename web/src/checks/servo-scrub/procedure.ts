// SPDX-License-Identifier: MIT
// The car on its tyres, ten moves from lock to lock inside the end points, each fired by the rig in a burst: one
// there and back on the servo's current, one there and back on the rail, in turn.
import type { Bench } from '../check.ts';
import { keptBurst } from '../burst-wave.ts';
import { railPlan } from '../rail-plan.ts';
import { keepStretch } from '../stretch.ts';
import type { Evidence, Move } from './evidence.ts';
import { askLocks, type Locks } from '../steering-locks.ts';

const restUs = 1500;
const moves = 10;
/** A move, the frame before it and the rest after it, in whole blocks of 48. */
const burstSamples = 4992;
const fireAt = 96;
const holdMs = 900;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(railPlan);
  const locks = await askLocks(bench);
  await bench.ask('Car on its tyres on the surface it races on, linkage on. Fingers away from the steering.');
  tell(bench, 0);
  await bench.steer(locks.lowUs, 0.6);
  await bench.wait(0.4);
  const kept: Move[] = [];
  for (let k = 0; k < moves; k++) kept.push(await move(bench, locks, k));
  await bench.steer(restUs, 0.6);
  return { moves: kept };
}
async function move(bench: Bench, { lowUs, highUs }: Locks, k: number): Promise<Move> {
  tell(bench, k);
  const [fromUs, toUs] = k % 2 === 0 ? [lowUs, highUs] : [highUs, lowUs];
  const tap = k % 4 < 2 ? 'railCurrent' : 'railVoltage';
  const action = { kind: 'steering', widthUs: toUs, ms: holdMs } as const;
  const burst = keptBurst(await bench.burst({ tap, samples: burstSamples, action, atSample: fireAt }));
  await bench.steer(toUs, 0);
  return { fromUs, toUs, burst, rest: await keepStretch(bench, 0.05, 0.25) };
}
function tell(bench: Bench, k: number): void {
  bench.progress({
    step: k + 1,
    of: moves,
    words: `Lock to lock, move ${k + 1} of ${moves}.`,
    leftS: moves - k,
  });
}
