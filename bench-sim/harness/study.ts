// SPDX-License-Identifier: MIT
// `npm run study`: runs checks over seeds (and faults) on the emulated firmware, or with --solved on the plant at
// its conversion instants, or sums up earlier studies, and says how honest and how tight their intervals are, whether
// that is as it has to be, and which verdict each fault got. Exit code 1 when a criterion is not met.
import { exitCode } from './exit-code.ts';
import { parseStudyArguments, type StudyArguments } from './study-arguments.ts';
import { cellsOf } from './study-cells.ts';
import { runStudy } from './study-crew.ts';
import { allMet } from './study-criteria.ts';
import { readStudies, type PooledStudies } from './study-files.ts';
import { summaryOf } from './study-report.ts';
import { textOf } from './study-text.ts';
import { runCommand } from './terminal.ts';

const words = process.argv.slice(2);

async function main(): Promise<number> {
  const wanted = parseStudyArguments(words);
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

await runCommand(main, words.includes('--json'));
