// SPDX-License-Identifier: MIT
// Hands the cells of a study to worker processes and gathers their outcomes in the order of the cells.
import { fork, type ChildProcess } from 'node:child_process';
import { join } from 'node:path';
import type { Cell, CellOutcome, StudyWay } from './study-run.ts';

interface Answer {
  readonly outcomes?: CellOutcome[];
  readonly failed?: string;
}
/** Rejects when a worker breaks: a study with holes is none. */
export async function runStudy(
  cells: readonly Cell[],
  { workers, ...way }: StudyWay & { readonly workers: number },
  told: (outcome: CellOutcome, done: number) => void,
): Promise<CellOutcome[]> {
  const outcomes: CellOutcome[][] = [];
  let next = 0;
  let done = 0;
  const crew = Array.from({ length: Math.min(workers, cells.length) }, () => start());
  const work = async (worker: ChildProcess) => {
    while (next < cells.length) {
      const index = next++;
      outcomes[index] = await ask(worker, cells[index], way);
      told(outcomes[index][0], ++done);
    }
  };
  try {
    await Promise.all(crew.map(work));
  } finally {
    for (const worker of crew) worker.kill();
  }
  return outcomes.flat();
}
const start = (): ChildProcess =>
  fork(join(import.meta.dirname, 'study-worker.ts'), { execArgv: ['--import', 'tsx'] });

function ask(worker: ChildProcess, cell: Cell, way: StudyWay): Promise<CellOutcome[]> {
  const named = `${cell.check}, seed ${cell.seed}`;
  return new Promise((resolve, reject) => {
    const ended = (code: number | null) => reject(new Error(`A worker ended (${code}) at ${named}.`));
    worker.once('exit', ended);
    worker.once('message', ({ outcomes, failed }: Answer) => {
      worker.off('exit', ended);
      if (outcomes) resolve(outcomes);
      else reject(new Error(`${named}: ${failed}`));
    });
    worker.send({ cell, way });
  });
}
