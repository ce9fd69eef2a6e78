// SPDX-License-Identifier: MIT
// A bench in this process whose motor turns: powered up, its fail-safe test passed, the throttle ramped. The scan
// list holds what the throttle needs and the whole multiplexer.
import type { ScanPlan } from '#checks/check';
import { benchInProcess, type BenchInProcess } from './bench-in-process.ts';
import { PinLog } from './pin-log.ts';

export const plan: ScanPlan = {
  fast: ['controllerVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'],
  slow: 'multiplexer',
};

export async function spinning(
  seed: number,
  fraction: number,
): Promise<{ on: BenchInProcess; pins: PinLog }> {
  const on = await benchInProcess(seed);
  const pins = new PinLog(on.rig);
  await on.bench.powerUp(plan);
  await on.bench.throttle(0.12, 0.3);
  await on.bench.wait(0.8);
  await on.bench.failSafeTest(0.7);
  await on.bench.wait(0.6);
  await on.bench.throttle(fraction, 0.4);
  await on.bench.wait(0.6);
  return { on, pins };
}
