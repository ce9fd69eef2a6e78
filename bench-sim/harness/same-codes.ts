// SPDX-License-Identifier: MIT
// `node --import tsx bench-sim/harness/same-codes.ts [SEEDS]`: runs every check on the emulated firmware and solves
// the same plant at the same instants without it; counts converter codes that differ. Exit 1 if any does by more than one.
import { checks } from '#checks/index';
import type { Check } from '#checks/check';
import { runCheck } from '#session/check-runner';
import { drawCar } from '#sim/physics/population';
import { BenchLog } from '#sim/replay/bench-log';
import { replayPlant } from '#sim/replay/plant-replay';
import { seededRandom } from '#sim/seeded-random';
import { seedOf } from './command-arguments.ts';
import { openVirtual } from './bench-place.ts';

const seeds = seedOf(process.argv[2] ?? '20');
let worst = 0;
for (let seed = 1; seed <= seeds; seed++) {
  for (const check of checks) worst = Math.max(worst, await compare(check, seed));
}
process.exitCode = worst > 1 ? 1 : 0;

async function compare(check: Check, seed: number): Promise<number> {
  const log = new BenchLog();
  const { session, car, hands } = await openVirtual(seed, {}, { watcher: log });
  await runCheck(session, check, { car, label: { id: '', startedAt: '', tool: 'study' }, ask: hands });
  await session.close();
  const { codes } = replayPlant(log, drawCar(seed).plant, seededRandom(seed, 'rig'));
  const differences = Array.from(codes, (code, k) => Math.abs(code - log.codes.at(k)));
  const most = differences.reduce((a, b) => Math.max(a, b), 0);
  const differing = differences.filter((d) => d > 0).length;
  process.stdout.write(
    `${check.id} seed ${seed}: ${codes.length} conversions, ${differing} differ, by ${most} at most\n`,
  );
  return most;
}
