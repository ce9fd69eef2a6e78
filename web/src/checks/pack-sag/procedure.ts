// SPDX-License-Identifier: MIT
// The pack load for a second at a time, with the rests that the rig enforces; then, as a second way, ten seconds of a
// light load at the rail and the pack load on top of it. It commands and marks.
import type { Bench, ScanPlan } from '../check.ts';
import { keepStretch, type Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

const plan: ScanPlan = {
  fast: ['packVoltage', 'packCurrentWide', 'controllerVoltage', 'railVoltage'],
  slow: 'multiplexer',
};
const stepsWanted = 3;
const loadS = 1;
/** The end of the second, as the standard for the second way reads it; each tap of a cell comes once in 7.5 ms. */
const lateS = 0.66;
const keepS = 0.28;
const recoverS = 6;
const lightMask = 1;
const lightS = 10;
/** The longest the rig keeps a load on without being told again, and how long before its end it is told. */
const loadMostS = 2;
const renewedS = 0.2;
const stepsOfAll = 3;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(plan, 'rail');
  tell(bench, 1, 'The pack at rest.', 50);
  const free = [await keepStretch(bench, 1, keepS)];
  const loaded: Stretch[] = [];
  for (let k = 0; k < stepsWanted; k++) {
    tell(bench, 2, `Pack load, ${k + 1} of ${stepsWanted}.`, 40 - 9 * k);
    loaded.push(await heavyLoad(bench));
    free.push(await keepStretch(bench, recoverS, keepS));
  }
  tell(bench, 3, 'Ten seconds of a light load, then the pack load.', 12);
  return { free, loaded, second: await secondWay(bench) };
}
async function heavyLoad(bench: Bench): Promise<Stretch> {
  bench.mark('pack load');
  await bench.turn('packLoad', true, loadS);
  const kept = await keepStretch(bench, lateS, keepS);
  await bench.wait(0.1);
  return kept;
}
async function secondWay(bench: Bench): Promise<Evidence['second']> {
  const turnS = loadMostS - renewedS;
  for (let leftS = lightS; leftS > turnS; leftS -= turnS) {
    await bench.load(lightMask, loadMostS);
    await bench.wait(turnS);
  }
  await bench.load(lightMask, loadMostS);
  const light = await keepStretch(bench, 0.7, keepS);
  const heavy = await heavyLoad(bench);
  return { light, heavy };
}
function tell(bench: Bench, step: number, words: string, leftS: number): void {
  bench.progress({ step, of: stepsOfAll, words, leftS });
}
