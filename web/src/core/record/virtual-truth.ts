// SPDX-License-Identifier: MIT
// What only a virtual rig can add to a record: its seed, its faults and the true values of the results. The same
// for the page and the command line. It knows no rig.
import type { z } from 'zod';
import type { RunRecord, virtualSchema } from './run-record.ts';

export type VirtualTruth = z.infer<typeof virtualSchema>;
/** A virtual bench, as far as a record tells of it. */
export interface VirtualBench {
  readonly seed: number;
  readonly faults: Readonly<Partial<Record<string, number>>>;
  truth(): Readonly<Record<string, number>>;
}
/** The truth as it stands now: ask when the run is over. */
export function truthOf(bench: VirtualBench): VirtualTruth {
  const severe = Object.entries(bench.faults).filter((entry) => entry[1] !== undefined);
  return {
    seed: bench.seed,
    faults: Object.fromEntries(severe) as VirtualTruth['faults'],
    truth: { ...bench.truth() },
  };
}
/** The record of a real rig stays as it is. */
export const withTruth = (record: RunRecord, virtual: VirtualTruth | null): RunRecord =>
  virtual ? { ...record, virtual } : record;
/** By what the runs of one virtual rig belong together: the same seed has the same errors. */
export const virtualSerial = (seed: number): string => `virtual ${seed}`;
