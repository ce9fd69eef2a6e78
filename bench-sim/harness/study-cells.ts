// SPDX-License-Identifier: MIT
// Which cells a study has: every check on every seed without faults, and each fault at severity 0 and 1 on the
// check that must notice it. It runs nothing.
import { faultTable } from '#sim/faults/faults';
import type { Cell } from './study-run.ts';

export interface StudyPlan {
  readonly checks: readonly string[];
  readonly firstSeed: number;
  readonly seeds: number;
  readonly withFaults: boolean;
}
export function cellsOf({ checks, firstSeed, seeds, withFaults }: StudyPlan): Cell[] {
  const all = Array.from({ length: seeds }, (_, i) => firstSeed + i);
  const healthy = checks.flatMap((check) => all.map((seed) => ({ check, seed, faults: {} })));
  if (!withFaults) return healthy;
  const spoilt = faultTable
    .filter(({ check }) => checks.includes(check))
    .flatMap(({ name, check }) =>
      [0, 1].flatMap((severity) => all.map((seed) => ({ check, seed, faults: { [name]: severity } }))),
    );
  return [...healthy, ...spoilt];
}
