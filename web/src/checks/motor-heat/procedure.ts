// SPDX-License-Identifier: MIT
// Five minutes at half throttle, then four at neutral: the way up tells the capacity, the way down how fast it goes to the
// air. The heating ends early where the can nears 65 C, as it climbs on after the stop.
import type { Bench, ScanPlan } from '../check.ts';
import { mayOpen, provenSpin } from '../proven-spin.ts';
import { keepStretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

const plan: ScanPlan = {
  fast: ['controllerVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'],
  slow: 'multiplexer',
};
const heatingS = 300;
const coolingS = 240;
/** The thermistor shows less than the can has and climbs some 5 K after the stop (from memory): 65 C at the can. */
const stopAtC = 58;
const tellEveryS = 5;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(plan);
  tell(bench, 1, 'What the controller draws at neutral.', heatingS + coolingS);
  const idle = await keepStretch(bench, 0.1, 1);
  const proven = await provenSpin(bench);
  if (!mayOpen(proven)) return { ...proven, idle, course: null };
  await bench.wait(0.5);
  await bench.throttle(0.5, 0.6);
  const fromS = bench.now();
  await through(bench, heatingS, (leftS) => {
    const can = shownC(bench);
    tell(bench, 2, `Half throttle; the can shows ${can.toFixed(0)} °C.`, leftS + coolingS);
    return can >= stopAtC;
  });
  const heating = { fromS, toS: bench.now() };
  bench.mark('neutral');
  await bench.throttle(0, 0.3);
  const coolsFromS = bench.now();
  await through(bench, coolingS, (leftS) => {
    tell(bench, 3, `It cools; the can shows ${shownC(bench).toFixed(0)} °C.`, leftS);
    return false;
  });
  return { ...proven, idle, course: { heating, cooling: { fromS: coolsFromS, toS: bench.now() } } };
}
const shownC = (bench: Bench): number => bench.samples.latest('thermistorMotor')?.value ?? Number.NaN;

async function through(bench: Bench, seconds: number, isDone: (leftS: number) => boolean): Promise<void> {
  const endS = bench.now() + seconds;
  while (bench.now() < endS && !isDone(endS - bench.now()))
    await bench.wait(Math.min(tellEveryS, endS - bench.now()));
}
function tell(bench: Bench, step: number, words: string, leftS: number): void {
  bench.progress({ step, of: 3, words, leftS: Math.max(1, Math.round(leftS)) });
}
