// SPDX-License-Identifier: MIT
// A rig, a car and hands, joined for one run: the virtual rig in this program and its own time, or a serial device
// in real time. It picks clock, seed and link, and runs nothing.
import { randomBytes } from 'node:crypto';
import { wire } from '#protocol/codes';
import type { Car } from '#core/parts/part';
import { RigError } from '#session/rig-error';
import { RigSession } from '#session/rig-session';
import type { Faults } from '#sim/faults/faults';
import { drawCar } from '#sim/physics/population';
import { seededRandom } from '#sim/seeded-random';
import { VirtualLink } from '#sim/virtual-link';
import { createVirtualRig } from '#sim/virtual-rig';
import type { Plant } from '#sim/wiring/plant';
import type { RigWatcher } from '#sim/wiring/rig-watcher';
import { readCar, requireSoundLimits } from './car-file.ts';
import type { RunArguments } from './command-arguments.ts';
import { firmwareHex } from './firmware-file.ts';
import { handsFor, type Hands } from './hands.ts';
import { nodeClock } from './node-clock.ts';
import { goBeforeOthers } from './process-priority.ts';
import { SerialLink } from './serial-link.ts';
import { readStoreFile } from './store-file.ts';

export interface BenchPlace {
  readonly session: RigSession;
  readonly car: Car;
  readonly hands: Hands;
  /** Whoever wires a virtual car as a check says; a person was told on the screen. */
  readonly wires?: Hands;
  /** Only where the rig is virtual and in this program. */
  readonly virtual?: VirtualTruth;
}
export interface VirtualTruth {
  readonly seed: number;
  readonly faults: Faults;
  /** Processor cycles in a second of true time. */
  readonly trueHz: number;
  truth(): Readonly<Record<string, number>>;
}
export const defaultSeed = 1;
/** The day by which calibrations are old. */
export const today = (): string => new Date().toISOString().slice(0, 10);
/** What else a virtual rig may be given. */
export interface Fitted {
  /** Content of its memory. */
  readonly store?: Uint8Array;
  /** Something between the car and the rig. */
  readonly around?: (plant: Plant) => Plant;
}

/** Connected and ready. Rejects with RigError or BadUsage. */
export function openPlace(wanted: RunArguments): Promise<BenchPlace> {
  return wanted.rig === 'virtual'
    ? openVirtual(wanted.seed ?? defaultSeed, wanted.faults, {
        store: wanted.store === null ? undefined : readStoreFile(wanted.store),
      })
    : openSerial(wanted);
}
export async function openVirtual(
  seed: number,
  faults: Faults = {},
  { store, around = (plant) => plant, watcher }: Fitted & { readonly watcher?: RigWatcher } = {},
): Promise<BenchPlace & { virtual: VirtualTruth; exportStore(): Uint8Array }> {
  const { plant: bare, car } = drawCar(seed, faults);
  const plant = around(bare);
  const rig = createVirtualRig({ hex: firmwareHex(), plant, seed, faults, store, watcher });
  const link = new VirtualLink(rig);
  const random = seededRandom(seed, 'host');
  const session = new RigSession(link, link.clock, {
    mayBeat: () => true,
    randomWord: () => random.uint32(),
    today,
  });
  await session.connect();
  const hands = (words: string) => Promise.resolve(rig.person(words));
  const virtual = { seed, faults, trueHz: rig.trueHz, truth: () => plant.truth() };
  return { session, car, hands, wires: hands, virtual, exportStore: () => rig.exportStore() };
}
type SerialWanted = Pick<RunArguments, 'rig' | 'car' | 'seed' | 'scene' | 'handsReady'>;
export async function openSerial(wanted: SerialWanted): Promise<BenchPlace> {
  const car = wanted.car === null ? drawCar(wanted.seed ?? defaultSeed).car : readCar(wanted.car);
  const hands = handsFor(wanted);
  goBeforeOthers();
  const session = await connectSerial(wanted.rig);
  if (wanted.car !== null) await soundOrClosed(session, wanted.car, car);
  // A rig that tripped in a session before this one: a new run begins with its trip cleared.
  if (session.state.kind === 'tripped') await session.clearTrip();
  return { session, car, hands, wires: wanted.scene === null ? undefined : hands };
}
async function soundOrClosed(session: RigSession, path: string, car: Car): Promise<void> {
  try {
    requireSoundLimits(path, car, session.rig);
  } catch (error) {
    await session.close();
    throw error;
  }
}
/** At the usual speed first, then at the slow one; where neither helps, what was seen at the usual speed is told. */
async function connectSerial(path: string): Promise<RigSession> {
  try {
    return await connectAt(path, wire.baud);
  } catch (error) {
    if (!(error instanceof RigError) || error.code !== 'notARig') throw error;
    return connectAt(path, wire.baudSlow).catch(() => {
      throw error;
    });
  }
}
async function connectAt(path: string, baud: number): Promise<RigSession> {
  const link = new SerialLink(path, baud);
  const randomWord = () => randomBytes(4).readUInt32LE();
  const session = new RigSession(link, nodeClock, { mayBeat: () => true, randomWord, today });
  await session.connect();
  return session;
}
