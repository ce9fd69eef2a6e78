// SPDX-License-Identifier: MIT
// A virtual rig in this process with a session on it, as the command line builds it: the committed firmware, the
// car of a seed, faults. For tests that need the session, the pins or both.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Faults } from '#sim/faults/faults';
import { drawCar } from '#sim/physics/population';
import { VirtualLink } from '#sim/virtual-link';
import { createVirtualRig, type VirtualRig } from '#sim/virtual-rig';
import type { Car } from '#core/parts/part';
import { RunBench } from '#session/bench';
import { RigSession } from '#session/rig-session';
import { RunWaits } from '#session/run-waits';
import { watchRun } from '#session/run-watch';

export const hexFile = join(import.meta.dirname, '../../firmware-protocol/firmware/bench-marshal.hex');

export interface BenchInProcess {
  readonly rig: VirtualRig;
  readonly link: VirtualLink;
  readonly session: RigSession;
  readonly bench: RunBench;
  readonly car: Car;
  /** Set to false and the beats stop, as when nobody watches. */
  watched: boolean;
}
/** A connected session; nothing is live yet. */
export async function benchInProcess(seed: number, faults: Faults = {}): Promise<BenchInProcess> {
  const { plant, car } = drawCar(seed, faults);
  const rig = createVirtualRig({ hex: readFileSync(hexFile, 'utf8'), plant, seed, faults });
  const link = new VirtualLink(rig);
  const whole = { watched: true };
  const session = new RigSession(link, link.clock, { mayBeat: () => whole.watched, randomWord: () => seed });
  await session.connect();
  const waits = new RunWaits();
  watchRun(session, waits, undefined);
  const taps = ['thermistorMotor'];
  const bench = new RunBench(session, waits, {
    car,
    taps,
    ask: async (words) => rig.person(words),
    progress: () => {},
  });
  return Object.assign(whole, { rig, link, session, bench, car });
}
/** Waits on the rig's true time, whatever the session thinks of it. */
export const trueWait = ({ link }: BenchInProcess, ms: number): Promise<void> =>
  new Promise((done) => link.clock.after(ms, done));
