// SPDX-License-Identifier: MIT
// A process of its own that runs the cells of a study that it is sent, one after the other: on the emulated
// firmware, or solved at the instants of a template that it makes once for each check.
import { findCheck } from './check-catalog.ts';
import { makeTemplate, replayCell, type CheckTemplate } from './study-replay.ts';
import { runCell, type Cell, type CellOutcome, type StudyWay } from './study-run.ts';

/** Seed of the templates; none of the seeds that are usually studied. */
const templateSeed = 900_001;
const templates = new Map<string, Promise<CheckTemplate>>();

interface Wish {
  readonly cell: Cell;
  readonly way: StudyWay;
}
async function outcomesOf({ cell, way }: Wish): Promise<CellOutcome[]> {
  const check = findCheck(cell.check);
  if (!way.solved) return runCell(check, cell, way);
  if (!templates.has(check.id)) templates.set(check.id, makeTemplate(check, templateSeed));
  return replayCell(check, cell, (await templates.get(check.id)) as CheckTemplate, way);
}
process.on('message', (wish: Wish) => {
  outcomesOf(wish).then(
    (done) => process.send?.({ outcomes: done }),
    (error: unknown) => process.send?.({ failed: error instanceof Error ? error.stack : String(error) }),
  );
});
