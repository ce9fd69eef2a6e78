// SPDX-License-Identifier: MIT
// Three to five marks of the end bell, the first one again at the end. Between two marks the feed is off, so that the
// person can take any time over the screws; what was measured stays, and the run goes on where it was.
import type { Bench, ScanPlan } from '../check.ts';
import { mayOpen, provenSpin } from '../proven-spin.ts';
import { keepStretch } from '../stretch.ts';
import type { Evidence, Mark } from './evidence.ts';

const plan: ScanPlan = {
  fast: ['controllerVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'],
  slow: 'multiplexer',
};
/** What the rig wants to see while the feed closes. */
const feedPlan: ScanPlan = {
  fast: ['packVoltage', 'controllerVoltage', 'railVoltage', 'packCurrentWide'],
  slow: 'multiplexer',
};
const degreesWanted = { unit: 'degrees', min: 0, max: 70 } as const;
/** A bare motor runs down within this, with a margin. */
const runsDownS = 2.5;
const filledWithinS = 1;
const filledShare = 0.96;
const railUpV = 3.5;
/** At neutral with the rail up: the rig wants 2.5 s. */
const neutralS = 3;

export async function procedure(bench: Bench): Promise<Evidence> {
  const question = 'How many marks of the end bell shall be run, three to five?';
  const count = Math.round(await bench.askNumber(question, { unit: 'marks', min: 3, max: 5 }));
  const marks: Mark[] = [];
  for (const mark of order(count)) {
    const degrees = await degreesAt(bench, mark, count);
    if (marks.length === 0) await bench.powerUp(plan);
    else await power(bench);
    tell(bench, marks.length + 1, count, `The motor at ${degrees} degrees.`);
    marks.push(await oneMark(bench, degrees));
    if (!mayOpen(marks[marks.length - 1])) break;
    await bench.wait(runsDownS);
    await bench.feed('off');
  }
  return { marks };
}
/** Each mark, then the first again. */
const order = (count: number): number[] => [...Array.from({ length: count }, (_, k) => k + 1), 1];

const degreesAt = (bench: Bench, mark: number, count: number): Promise<number> =>
  bench.askNumber(
    `Set the end bell to its mark ${mark} of ${count}, tighten it, and read the degrees.`,
    degreesWanted,
  );
/** Without power the rig forgets that throttle was proven safe, so each mark proves it again. */
async function oneMark(bench: Bench, degrees: number): Promise<Mark> {
  const idle = await keepStretch(bench, 0.1, 1);
  const proven = await provenSpin(bench);
  if (!mayOpen(proven)) return { ...proven, degrees, idle, steps: [] };
  await bench.wait(0.6);
  return { ...proven, degrees, idle, steps: await spin(bench) };
}
async function power(bench: Bench): Promise<void> {
  await bench.scan(feedPlan);
  await bench.wait(0.1);
  await bench.feed('limited');
  await bench.waitFor((samples) => {
    const level = (tap: string) => samples.latest(tap)?.value ?? 0;
    return level('controllerVoltage') > filledShare * level('packVoltage');
  }, filledWithinS);
  await bench.feed('full');
  await bench.waitFor((samples) => (samples.latest('railVoltage')?.value ?? 0) > railUpV, 5);
  await bench.wait(neutralS);
  await bench.scan(plan);
}
async function spin(bench: Bench): Promise<Mark['steps']> {
  await bench.throttle(0.5, 0.6);
  await bench.wait(1);
  const steps: Mark['steps'] = [];
  for (const throttle of [0.75, 1]) {
    await bench.throttle(throttle, 0.4);
    steps.push({ throttle, stretch: await keepStretch(bench, 1.2, throttle === 1 ? 1.6 : 1) });
  }
  await bench.throttle(0, 0.3);
  bench.mark('neutral');
  return steps;
}
function tell(bench: Bench, mark: number, count: number, words: string): void {
  bench.progress({ step: mark, of: count + 1, words, leftS: 16 * (count + 2 - mark) });
}
