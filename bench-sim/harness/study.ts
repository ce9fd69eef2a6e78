// SPDX-License-Identifier: MIT
// `npm run study`: runs checks over seeds (and faults) on the emulated firmware, or with --solved on the plant at
// its conversion instants, or sums up earlier studies, and says how honest and how tight their intervals are, whether
// that is as it has to be, and which verdict each fault got. Exit code 1 when a criterion is not met.
import { errorDocument, exitCode, exitOfError } from './exit-code.ts';
import { parseStudyArguments, type StudyArguments } from './study-arguments.ts';
import { cellsOf } from './study-cells.ts';
import { runStudy } from './study-crew.ts';
import { allMet, criteriaOf } from './study-criteria.ts';
import { decisionCounts } from './study-decisions.ts';
import { readStudies, type PooledStudies } from './study-files.ts';
import type { CellOutcome } from './study-run.ts';
import { pooledCoverage, resultSummaries, verdictCounts } from './study-summary.ts';
import { textOf, type RigsSummary, type StudySummary } from './study-text.ts';

async function main(): Promise<number> {
  const wanted = parseStudyArguments(process.argv.slice(2));
  const studies = wanted.pool.length > 0 ? readStudies(wanted.pool) : await run(wanted);
  const summary = summaryOf(studies);
  const { outcomes } = studies;
  process.stdout.write(
    wanted.json ? `${JSON.stringify({ ...summary, outcomes }, null, 1)}\n` : `${textOf(summary)}\n`,
  );
  return summary.rigs.every(({ criteria }) => allMet(criteria)) ? exitCode.pass : exitCode.fail;
}
async function run(wanted: StudyArguments): Promise<PooledStudies> {
  const date = new Date().toISOString();
  const outcomes = await runStudy(cellsOf(wanted), wanted, (outcome, done) =>
    process.stderr.write(
      `${done} ${outcome.check} seed ${outcome.seed} ${outcome.verdict} ${outcome.wallS.toFixed(1)} s\n`,
    ),
  );
  return { dates: [date, date], solved: wanted.solved, outcomes };
}
function summaryOf({ dates, solved, outcomes }: PooledStudies): StudySummary {
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
  };
}
/** Rig seconds a second of one worker. */
const speedOf = (outcomes: readonly CellOutcome[]): number =>
  outcomes.reduce((sum, { rigS }) => sum + rigS, 0) / outcomes.reduce((sum, { wallS }) => sum + wallS, 0);

try {
  process.exitCode = await main();
} catch (error) {
  process.stderr.write(`${errorDocument(error).error.message}\n`);
  process.exitCode = exitOfError(error);
}
