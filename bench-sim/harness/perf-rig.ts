// SPDX-License-Identifier: MIT
// How fast the whole virtual rig runs with a session on it, as in a check: firmware, board, plant, cable and host.
// Streaming idle, with the motor spinning, and sending bursts. It judges nothing.
import type { BurstPlan } from '#checks/check';
import { RunBench } from '#session/bench';
import { RunWaits } from '#session/run-waits';
import { watchRun } from '#session/run-watch';
import { openVirtual, type BenchPlace } from './bench-place.ts';
import { measure, type Benchmark, type Measured } from './benchmark.ts';
import { besideReference, cpuSeconds } from './cpu-time.ts';
import { partThrottle, perfSeed, plantShare } from './perf-plant.ts';

export interface RigEffort {
  readonly repeats: number;
  /** Rig seconds of one turn. */
  readonly rigS: number;
}
const plan = {
  fast: ['packVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'],
  slow: 'multiplexer',
} as const;
const burst: BurstPlan = { tap: 'railVoltage', samples: 1000, action: { kind: 'none' }, atSample: 0 };

export async function rigBenchmarks(effort: RigEffort): Promise<Measured[]> {
  const place = await openVirtual(perfSeed);
  const waits = new RunWaits();
  const unwatch = watchRun(place.session, waits);
  const bench = new RunBench(place.session, waits, {
    car: place.car,
    taps: ['thermistorMotor'],
    ask: place.hands,
    progress: () => {},
  });
  try {
    return await allStages(bench, place, effort);
  } finally {
    unwatch();
    bench.close();
    await place.session.close();
  }
}
async function allStages(bench: RunBench, place: BenchPlace, effort: RigEffort): Promise<Measured[]> {
  const stage = (name: string, title: string, stretch: () => Promise<unknown>) =>
    measure([speed(place, name, title, stretch), cost(place, name, title, stretch)], effort.repeats);
  const wait = () => bench.wait(effort.rigS);
  await bench.scan(plan);
  await bench.command({ type: 'stream', on: 1 });
  const idle = await stage('idle', 'streaming, everything off', wait);
  await bench.powerUp(plan);
  await bench.throttle(partThrottle, 0.5);
  const share = await measure([plantShare(place.car, () => rigSeconds(place, wait))], effort.repeats);
  const motor = await stage('motor', 'motor spinning at a quarter throttle', wait);
  await bench.throttle(0, 0.5);
  const bursts = await stage('burst', 'bursts of one tap, back to back', () => bench.burst(burst));
  return [...idle, ...motor, ...share, ...bursts];
}
/** Rig seconds that went by meanwhile. */
async function rigSeconds({ session }: BenchPlace, stretch: () => Promise<unknown>): Promise<number> {
  const startMs = session.clock.now();
  await stretch();
  return (session.clock.now() - startMs) / 1000;
}
const speed = (
  place: BenchPlace,
  name: string,
  title: string,
  stretch: () => Promise<unknown>,
): Benchmark => ({
  id: `rig-speed-${name}`,
  title: `Speed of the virtual rig: ${title}`,
  of: 'rig time',
  against: 'processor time',
  ratio: async () => {
    let rigS = 0;
    const cpuS = await cpuSeconds(async () => (rigS = await rigSeconds(place, stretch)));
    return rigS / cpuS;
  },
});
const cost = (
  place: BenchPlace,
  name: string,
  title: string,
  stretch: () => Promise<unknown>,
): Benchmark => ({
  id: `rig-cost-${name}`,
  title: `Cost of the virtual rig: ${title}`,
  of: 'processor time of a rig second',
  against: 'processor time of the reference loop',
  ratio: async () => {
    let rigS = 0;
    const { workS, loopS } = await besideReference(async () => (rigS = await rigSeconds(place, stretch)));
    return workS / rigS / loopS;
  },
});
