// SPDX-License-Identifier: MIT
// `node --import tsx tests/browser/walk-plans.ts [WIDTH HEIGHT] [PLAN...] [--pictures FOLDER]`: walks the plans from
// start to sentence on the built page, and prints how each ended, the times it tells, and what axe finds on its screens,
// those of the runs as well. Some twenty minutes for all of them, so it is no part of `npm test`.
import { parseArgs } from 'node:util';
import { planById, plans } from '#checks/plans/index';
import type { Plan } from '#checks/plans/plan';
import { builtPage, type BuiltPage } from './page-fixture.ts';
import { PlanLooks } from './plan-looks.ts';
import { doNext, sentenceOf, startPlan } from './plan-walk.ts';

const { positionals: words, values } = parseArgs({
  allowPositionals: true,
  options: { pictures: { type: 'string' } },
});
const numbers = words.filter((word) => /^\d+$/.test(word)).map(Number);
const [width = 1280, height = 800] = numbers;
const named = words.filter((word) => !/^\d+$/.test(word));
const looks = new PlanLooks(values.pictures ?? null);
const say = (line: string) => process.stdout.write(`${line}\n`);

function wanted(): readonly Plan[] {
  if (named.length === 0) return plans;
  return named.map((id) => {
    const plan = planById(id);
    if (!plan)
      throw new Error(`There is no plan "${id}". Plans: ${plans.map((each) => each.id).join(', ')}.`);
    return plan;
  });
}
/** A fresh profile for each, as on a first visit. */
async function walk(built: BuiltPage, { title }: Plan): Promise<boolean> {
  const startMs = performance.now();
  const { page, go, complaints } = await built.open(width, height);
  await page.getByRole('button', { name: 'Try it on the virtual rig' }).click();
  await page.getByRole('link', { name: 'Check the receiver rail' }).waitFor();
  await go('#/plans');
  await startPlan(page, title);
  const look = looks.at(page);
  while (await doNext(page, title, look));
  const told = [await sentenceOf(page), await page.getByText(/^Rig .*, person about /).innerText()];
  await look('sentence');
  const faults = [...looks.faults.splice(0), ...complaints];
  await page.context().close();
  const took = ((performance.now() - startMs) / 1000).toFixed(0);
  say(`${title}: ${told.join(' ')} Walked in ${took} s. ${faults.join('; ') || 'Nothing for axe.'}`);
  return told[0].startsWith('Ready') && faults.length === 0;
}

const chosen = wanted();
const built = await builtPage();
let allReady = true;
for (const plan of chosen) allReady = (await walk(built, plan)) && allReady;
await built.close();
process.exitCode = allReady ? 0 : 1;
