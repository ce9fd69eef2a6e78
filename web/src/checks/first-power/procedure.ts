// SPDX-License-Identifier: MIT
// Empties the capacitor, fills it through the limited feed for a quarter of a second, opens the feed at once where it
// did not fill, and only then closes the full feed for the standby current. It commands and marks.
import { mean } from 'simple-statistics';
import type { Bench, ScanPlan } from '../check.ts';
import { keepStretch, type Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';

/** The controller side twice a scan: the charge of a small capacitor is over in some milliseconds. */
const plan: ScanPlan = {
  fast: ['controllerVoltage', 'packVoltage', 'controllerVoltage', 'packCurrentNarrow'],
  slow: 'multiplexer',
};
const packFromV = 2;
const emptyV = 0.15;
/** 3 mF through 1 kohm from 8.4 V to 0.15 V: four time constants, and some more for the leak of others. */
const emptyWithinS = 25;
const emptyS = 0.2;
/** So long after a reset the rig takes a motor for still, and will open the feed when told. */
const stillAfterS = 10.5;
/** Five time constants of 4 mF; with the way back through the link below 0.3 s. */
const fillS = 0.24;
const leakS = 0.06;
/** What the rig itself wants before it closes the full feed. */
const filledShare = 0.95;
const bootS = 4;
const standbyS = 1;
const stepsOfAll = 4;

export async function procedure(bench: Bench): Promise<Evidence> {
  await bench.ask('Switch the speed controller off.');
  await bench.ask('Unplug servo and fan from the receiver.');
  const evidence = await throughFeed(bench);
  await bench.ask('Plug servo and fan in again once the rig is safe.');
  return evidence;
}
async function throughFeed(bench: Bench): Promise<Evidence> {
  await bench.powerUp(plan, 'live');
  tell(bench, 1, 'The pack at rest.', 30);
  const rest = await keepStretch(bench, 0.1, 0.6);
  const nothing = { rest, empty: null, emptied: true, charge: null, filled: null, standby: null };
  if ((bench.samples.latest('polarity')?.value ?? 0) < packFromV) return nothing;
  tell(bench, 2, 'Emptying the capacitor.', 28);
  if (!(await emptied(bench))) return { ...nothing, emptied: false };
  await bench.wait(stillAfterS - bench.now());
  const empty = await keepStretch(bench, 0.05, emptyS);
  tell(bench, 3, 'The limited feed fills the capacitor.', 7);
  const { charge, filled } = await fill(bench);
  const full = shareOf(bench, filled) >= filledShare;
  return { ...nothing, empty, charge, filled, standby: full ? await standby(bench) : null };
}
async function emptied(bench: Bench): Promise<boolean> {
  await bench.turn('bleeder', true, emptyWithinS);
  const low = await bench.waitFor(
    (samples) => (samples.latest('controllerVoltage')?.value ?? 1) < emptyV,
    emptyWithinS,
  );
  await bench.turn('bleeder', false);
  return low;
}
/** Opens the feed again at once unless the capacitor filled. */
async function fill(bench: Bench): Promise<{ charge: Stretch; filled: Stretch }> {
  const fromS = bench.now();
  await bench.feed('limited');
  await bench.wait(fromS + fillS - bench.now());
  const toS = bench.now();
  const filled = { fromS: toS - leakS, toS };
  if (shareOf(bench, filled) < filledShare) await bench.feed('off');
  return { charge: { fromS: fromS - 0.02, toS }, filled };
}
function shareOf({ samples }: Bench, { fromS, toS }: Stretch): number {
  const level = (tap: string) => mean(Array.from(samples.series(tap, fromS, toS).value));
  return level('controllerVoltage') / level('packVoltage');
}
async function standby(bench: Bench): Promise<Stretch> {
  await bench.feed('full');
  await bench.ask('Switch the speed controller on.');
  tell(bench, 4, 'Standby current.', bootS + standbyS);
  return keepStretch(bench, bootS, standbyS);
}
function tell(bench: Bench, step: number, words: string, leftS: number): void {
  bench.progress({ step, of: stepsOfAll, words, leftS });
}
