// SPDX-License-Identifier: MIT
// Which cells a study has: every check on every seed without faults, and each fault asked for at each severity on
// the check that must notice it. Healthy cells go seed by seed, so that partial figures are of all checks. It runs nothing.
import { faultTable } from '#sim/faults/faults';
import type { Cell } from './study-run.ts';

export interface StudyPlan {
  readonly checks: readonly string[];
  readonly firstSeed: number;
  readonly seeds: number;
  /** Names of faults; none: healthy cars only. */
  readonly faults: readonly string[];
  readonly severities: readonly number[];
}
export function cellsOf({ checks, firstSeed, seeds, faults, severities }: StudyPlan): Cell[] {
  const all = Array.from({ length: seeds }, (_, i) => firstSeed + i);
  if (faults.length === 0) return all.flatMap((seed) => checks.map((check) => ({ check, seed, faults: {} })));
  return faultTable
    .filter(({ check, name }) => checks.includes(check) && faults.includes(name))
    .flatMap(({ name, check }) =>
      severities.flatMap((severity) => all.map((seed) => ({ check, seed, faults: { [name]: severity } }))),
    );
}
