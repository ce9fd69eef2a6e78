// SPDX-License-Identifier: MIT
// All benchmarks in order, with how much is repeated, gathered in one document. It prints nothing.
import { machineOf, measure, type PerfDocument } from './benchmark.ts';
import { coreBenchmark } from './perf-core.ts';
import { recordBenchmarks } from './perf-record.ts';
import { rigBenchmarks } from './perf-rig.ts';

export interface Effort {
  readonly repeats: number;
  /** Rig seconds of one turn. */
  readonly rigS: number;
  /** Rounds of the two instruction cores in one turn. */
  readonly coreRounds: number;
}
export const thorough: Effort = { repeats: 9, rigS: 2, coreRounds: 5 };
export const quick: Effort = { repeats: 2, rigS: 0.3, coreRounds: 4 };

export async function perfDocument(effort: Effort, tell: (words: string) => void): Promise<PerfDocument> {
  const { repeats } = effort;
  const machine = await machineOf();
  tell('The instruction core against the stock core.');
  const core = await measure([coreBenchmark(effort.coreRounds)], repeats);
  tell('The virtual rig, idle, with the motor spinning, in bursts.');
  const rig = await rigBenchmarks(effort);
  tell('A run of rail-sag, its analysis and its record.');
  const record = await measure(await recordBenchmarks('rail-sag'), repeats);
  return { machine, benchmarks: [...rig, ...core, ...record] };
}
