// SPDX-License-Identifier: MIT
// A process of its own that runs the cells of a study that it is sent, one after the other: on the emulated
// firmware, or solved at the instants of a template that it makes once for each check.
import { findCheck } from './check-catalog.ts';
import { makeTemplate, replayCell, type CheckTemplate } from './study-replay.ts';
import { runCell, type Cell, type CellOutcome } from './study-run.ts';

/** Seed of the templates; none of the seeds that are usually studied. */
const templateSeed = 900_001;
const templates = new Map<string, Promise<CheckTemplate>>();

async function outcome({ cell, solved }: { cell: Cell; solved: boolean }): Promise<CellOutcome> {
  const check = findCheck(cell.check);
  if (!solved) return runCell(check, cell);
  if (!templates.has(check.id)) templates.set(check.id, makeTemplate(check, templateSeed));
  return replayCell(check, cell, (await templates.get(check.id)) as CheckTemplate);
}
process.on('message', (wish: { cell: Cell; solved: boolean }) => {
  outcome(wish).then(
    (done) => process.send?.({ outcome: done }),
    (error: unknown) => process.send?.({ failed: error instanceof Error ? error.stack : String(error) }),
  );
});
