// SPDX-License-Identifier: MIT
// Neutral, the proven first spin, then half throttle, where the controller's pulses draw most ripple, and every
// conversion of the pack current, sixteen times 0.85 s: a drive lasts a second at most without being told again, and nothing is
// told while a burst runs. With the throttle open the rig lets no other tap be watched so closely. Last, the pack load
// going off tells the corner of the tap's filter.
import type { Bench, BurstPlan, ScanPlan } from '../check.ts';
import { keptBurst } from '../burst-wave.ts';
import { mayOpen, provenSpin } from '../proven-spin.ts';
import { keepStretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

const plan: ScanPlan = {
  fast: ['controllerVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'],
  slow: 'multiplexer',
};
export const opening = 0.5;
/** Lines 1.2 Hz apart: the noise of a line is near a hundredth of a step. */
const samples = 8192;
const driveS = 1;
/** Their powers are averaged: the ripple of a sound capacitor lies near the noise of one. */
const burstsWanted = 16;
/** A bare motor runs down within this, with a margin. */
const runsDownS = 2.5;
const loadS = 0.15;
const loadsWanted = 2;
const stepsOfAll = 4;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.powerUp(plan);
  tell(bench, 1, 'What the controller draws at neutral.', 12);
  const idle = await keepStretch(bench, 0.1, 1);
  tell(bench, 2, 'A little throttle, then the pulses stop on purpose.', 10);
  const proven = await provenSpin(bench);
  if (!mayOpen(proven)) return { ...proven, idle, half: null, bursts: [] };
  tell(bench, 3, 'Half throttle, the pack current sample by sample.', 5);
  await bench.wait(0.4);
  await bench.throttle(opening, 0.5);
  const half = await keepStretch(bench, 1.2, 0.5);
  const bursts: Evidence['bursts'] = [];
  while (bursts.length < burstsWanted) bursts.push(await ripple(bench));
  await bench.throttle(0, 0.5);
  return { ...proven, idle, half, bursts, loadOff: await loadGoesOff(bench) };
}
/** The feed is off, so that no capacitor feeds the load; the rig ends the load by itself while the burst runs. */
async function loadGoesOff(bench: Bench): Promise<Evidence['bursts']> {
  tell(bench, 4, 'The motor runs down; then the pack load for a moment, to know the tap itself.', 6);
  await bench.wait(runsDownS);
  await bench.feed('off');
  const bursts: Evidence['bursts'] = [];
  while (bursts.length < loadsWanted) {
    await bench.wait(0.3);
    await bench.turn('packLoad', true, loadS);
    bursts.push(
      keptBurst(
        await bench.burst({ tap: 'packCurrentWide', samples, action: { kind: 'none' }, atSample: 0 }),
      ),
    );
  }
  return bursts;
}
/** The marked action outlasts the burst; then the throttle is held as before. */
async function ripple(bench: Bench): Promise<Evidence['bursts'][number]> {
  const burst = await bench.burst({ tap: 'packCurrentWide', samples, action: same(bench), atSample: 0 });
  await bench.throttle(opening, 0);
  return keptBurst(burst);
}
/** The same opening once more, so that it outlasts the burst. */
function same({ car }: Bench): BurstPlan['action'] {
  const { neutralUs, highUs } = car.controller.throttle;
  const widthUs = neutralUs + opening * (highUs - neutralUs);
  return { kind: 'throttle', widthUs, ms: 1000 * driveS };
}
function tell(bench: Bench, step: number, words: string, leftS: number): void {
  bench.progress({ step, of: stepsOfAll, words, leftS });
}
