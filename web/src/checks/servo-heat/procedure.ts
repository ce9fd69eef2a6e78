// SPDX-License-Identifier: MIT
// The car on its tyres, the steering from lock to lock without a rest, the case's temperature watched; off at once
// when it comes near what a servo bears.
import type { Bench } from '../check.ts';
import { railPlan } from '../rail-plan.ts';
import { askLocks, type Locks } from '../steering-locks.ts';
import type { Evidence } from './evidence.ts';

export const fullLengthS = 240;
const eachWayS = 0.5;
const restUs = 1500;
/** A thermistor shows some 4 K less than a case of 70 C has (from memory). */
const stopC = 66;

export const procedure = (bench: Bench): Promise<Evidence> => procedureOf(bench, fullLengthS);

export async function procedureOf(bench: Bench, lengthS: number): Promise<Evidence> {
  await bench.powerUp(railPlan);
  const locks = await askLocks(bench);
  const minutes = await bench.askNumber('How long is a race, from start to flag?', {
    unit: 'min',
    min: 1,
    max: 90,
  });
  await bench.ask('Car on its tyres on the surface it races on, linkage on. Fingers away from the steering.');
  const fromS = bench.now();
  const stoppedHot = await work(bench, locks, lengthS);
  const toS = bench.now();
  await bench.steer(restUs, 0.3);
  return { raceS: minutes * 60, working: { fromS, toS }, stoppedHot };
}
/** True when it had to end early. */
async function work(bench: Bench, { lowUs, highUs }: Locks, lengthS: number): Promise<boolean> {
  const endS = bench.now() + lengthS;
  const caseC = () => bench.samples.latest('thermistorServo')?.value ?? Number.NaN;
  for (let k = 0; bench.now() < endS; k++) {
    if (caseC() >= stopC) return true;
    if (k % 10 === 0) tell(bench, endS - bench.now(), caseC());
    await bench.steer(k % 2 === 0 ? highUs : lowUs, 0);
    await bench.wait(eachWayS);
  }
  return false;
}
function tell(bench: Bench, leftS: number, caseC: number): void {
  const words = `The steering works without a rest; the case shows ${caseC.toFixed(0)} °C.`;
  bench.progress({ step: 1, of: 1, words, leftS });
}
