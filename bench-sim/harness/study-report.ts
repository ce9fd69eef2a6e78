// SPDX-License-Identifier: MIT
// Outcomes of a study boiled down to its report: rigs as declared and calibrated ones apart. It runs nothing.
import { criteriaOf } from './study-criteria.ts';
import { decisionCounts } from './study-decisions.ts';
import { detectionOf } from './study-detection.ts';
import type { PooledStudies } from './study-files.ts';
import type { CellOutcome } from './study-run.ts';
import { pooledCoverage, resultSummaries, verdictCounts } from './study-summary.ts';
import type { RigsSummary, StudySummary } from './study-text.ts';

export function summaryOf({ dates, solved, outcomes }: PooledStudies): StudySummary {
  const seeds = outcomes.map(({ seed }) => seed);
  const [first, last] = [Math.min(...seeds), Math.max(...seeds)];
  const kinds = [false, true].map((kind) => outcomes.filter(({ calibrated }) => calibrated === kind));
  return {
    date: [...new Set(dates)].join(' to '),
    solved,
    firstSeed: first,
    seeds: last - first + 1,
    rigs: kinds.filter((kind) => kind.length > 0).map(rigsSummary),
    speed: speedOf(outcomes),
  };
}
function rigsSummary(outcomes: readonly CellOutcome[]): RigsSummary {
  const pooled = pooledCoverage(outcomes);
  const decisions = decisionCounts(outcomes);
  return {
    calibrated: outcomes[0].calibrated,
    pooled,
    results: resultSummaries(outcomes),
    decisions,
    criteria: pooled.of === 0 ? [] : criteriaOf(pooled, decisions),
    verdicts: verdictCounts(outcomes),
    detection: detectionOf(outcomes),
  };
}
/** Rig seconds a second of one worker. */
const speedOf = (outcomes: readonly CellOutcome[]): number =>
  outcomes.reduce((sum, { rigS }) => sum + rigS, 0) / outcomes.reduce((sum, { wallS }) => sum + wallS, 0);
