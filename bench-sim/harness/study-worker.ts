// SPDX-License-Identifier: MIT
// A process of its own that runs the cells of a study that it is sent, one after the other: on the emulated
// firmware, or solved at the instants of a template that it makes once for each check.
import { drawParameters } from '#sim/physics/population';
import { findCheck } from './check-catalog.ts';
import { makeTemplate, replayCell, type CheckTemplate } from './study-replay.ts';
import { runCell, type Cell, type CellOutcome, type StudyWay } from './study-run.ts';

/** First of the seeds for templates; none of the seeds that are usually studied. */
const firstTemplateSeed = 900_001;
/** servo-stall pushes further until the current stops growing: the template's servo comes fully on as late as any of
 *  the population, so that no other car needs a push that the template lacks. */
const lateServoRad = (5.6 * Math.PI) / 180;
function lateServoSeed(): number {
  for (let seed = firstTemplateSeed; ; seed++)
    if (drawParameters(seed).servo.bandRad > lateServoRad) return seed;
}
const templateSeed = lateServoSeed();
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
