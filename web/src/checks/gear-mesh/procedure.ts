// SPDX-License-Identifier: MIT
// The spur's paint dot at the top, from then on every edge is counted. A proven first spin, slow and steady for as long
// as some hundred turns of the spur take, a run-down from half throttle for the inertia; then, with the feed off, the
// person turns the spur on by hand to the tight tooth, counted live.
import type { Bench, ScanPlan } from '../check.ts';
import { mayOpen, provenSpin } from '../proven-spin.ts';
import { keepStretch, type Stretch } from '../stretch.ts';
import type { Evidence, MeshRun } from './evidence.ts';
import { edgesToTightTooth } from './tight-tooth.ts';

const plan: ScanPlan = {
  fast: ['controllerVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'],
  slow: 'multiplexer',
};
/** Some 200 turns of the spur. On the plant the tight place of eight cars came out within 9 degrees after this, and what
 *  the rotor may stand off between two Hall edges at the start is as much (measured). */
const slowS = 20;
/** Beyond the opening that turned it, so that a tight place does not stall it. */
const slowMargin = 0.02;
const longestCoastS = 6;
const standsAfterS = 0.15;
const handTurnS = 60;
const stepsOfAll = 6;

export async function procedure(bench: Bench): Promise<Evidence> {
  if (!bench.car.drive) return { teethKnown: false, run: null };
  await bench.stream(plan);
  await bench.turn('hallSupply', true);
  await bench.wait(0.2);
  await bench.ask(
    'Wheels off, pinion and spur meshed as on the track. Turn the spur until its paint dot stands at the top, and leave it there.',
  );
  const dotS = bench.now();
  await bench.powerUp(plan);
  tell(bench, 1, 'What the controller draws at neutral.');
  const idle = await keepStretch(bench, 0.1, 1);
  tell(bench, 2, 'A little throttle, then the pulses stop on purpose.');
  const proven = await provenSpin(bench);
  if (!mayOpen(proven)) return { teethKnown: true, run: { ...proven, dotS, idle, turning: null } };
  const run = { ...proven, dotS, idle, turning: await turning(bench, proven.opening ?? 0) };
  await toTightTooth(bench, run);
  return { teethKnown: true, run };
}
async function turning(bench: Bench, opening: number): Promise<MeshRun['turning']> {
  tell(bench, 3, 'Slow and steady, many turns of the spur.');
  await bench.wait(0.6);
  await bench.throttle(opening + slowMargin, 0.4);
  const slow = await keepStretch(bench, 1.2, slowS);
  tell(bench, 4, 'Half throttle, then neutral: the train runs down by itself.');
  await bench.throttle(0.5, 0.6);
  await bench.wait(0.8);
  bench.mark('neutral');
  await bench.throttle(0, 0);
  const fromS = bench.now();
  await bench.waitFor(() => bench.now() > fromS + standsAfterS && stands(bench), longestCoastS);
  return { slow, coast: { fromS, toS: bench.now() } satisfies Stretch };
}
const stands = (bench: Bench): boolean =>
  bench.samples.edges(bench.now() - standsAfterS, bench.now()).length === 0;

/** The feed goes off first: no hand at a spur that might be driven. */
async function toTightTooth(bench: Bench, run: MeshRun): Promise<void> {
  await bench.wait(0.5);
  await bench.feed('off');
  const { samples, rig, car } = bench;
  const input = { samples, rig, car, evidence: { teethKnown: true, run } };
  const atStart = edgesToTightTooth(input, bench.now());
  if (atStart === null) return;
  const countAtStart = counted(bench);
  const remaining = () => atStart.edges - (counted(bench) - countAtStart);
  tell(bench, 5, `The tight tooth is ${atStart.degrees.toFixed(0)} degrees of the spur ahead.`);
  await bench.ask(
    'The feed is off. Turn the spur on by hand, slowly, in its running direction, until the count comes to nought.',
  );
  let told = Number.NaN;
  await bench.waitFor(() => {
    const left = remaining();
    if (left !== told)
      tell(bench, 6, `${Math.max(0, Math.round(left * atStart.degreesPerEdge))} degrees of the spur to go.`);
    told = left;
    return left <= 0;
  }, handTurnS);
  await bench.ask('Hands off the spur: the tooth that is in mesh now is the tight one. Mark it.');
}
/** Edges of all three lines so far. */
function counted({ samples }: Bench): number {
  const { edgesA, edgesB, edgesC } = samples.status(samples.latestS - 0.1, samples.latestS + 0.1);
  const last = edgesA.length - 1;
  return last < 0 ? 0 : edgesA[last] + edgesB[last] + edgesC[last];
}
function tell(bench: Bench, step: number, words: string): void {
  bench.progress({ step, of: stepsOfAll, words, leftS: Math.max(2, 34 - 6 * step) });
}
