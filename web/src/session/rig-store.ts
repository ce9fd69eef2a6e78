// SPDX-License-Identifier: MIT
// What one rig keeps of itself: read with its age taken into account; written in pieces, committed by CRC, read back
// and compared. The rig holds two halves, so that a write that is cut leaves what was there. It measures nothing.
import { crc16 } from '#protocol/crc';
import { reasonCode } from '#protocol/codes';
import { agedStore, oldNotes } from '#core/calibration/calibration-age';
import { storeBytes, storeOf } from '#core/calibration/store-form';
import type { Descriptor, Store } from '#core/samples/rig-description';
import type { Clock } from './clock.ts';
import { answerTimeoutMs, type AnswerTo, type Command, type CommandQueue } from './command-queue.ts';
import { readAll, readTries } from './memory-reader.ts';
import { RefusedError, RigError } from './rig-error.ts';

export interface Kept {
  /** What counts: old calibrations widened. */
  readonly store: Store | null;
  /** What the rig truly keeps; a new store is made from this. */
  readonly keptStore: Store | null;
  /** Sentences a person should read: a store that can't be read, old calibrations. */
  readonly notes: readonly string[];
}
const chunkBytes = 32;
/** A piece of 32 bytes takes about 110 ms in the chip (3.4 ms a byte, from memory). */
const busyEveryMs = 25;
const busyForMs = 3000;

export async function readKept(queue: CommandQueue, descriptor: Descriptor, today?: string): Promise<Kept> {
  const bytes = await bytesOf(queue);
  if (bytes.length === 0) return { store: null, keptStore: null, notes: [] };
  const keptStore = stored(bytes, descriptor);
  if (!keptStore) return { store: null, keptStore, notes: [unreadable] };
  if (today === undefined) return { store: keptStore, keptStore, notes: [] };
  return { store: agedStore(keptStore, today), keptStore, notes: oldNotes(keptStore, today) };
}
const unreadable =
  "The rig's own store can't be read: serial number and calibration are taken as not set, so the declared tolerances count. Calibrate again.";

function stored(bytes: Uint8Array, descriptor: Descriptor): Store | null {
  try {
    return storeOf(bytes, descriptor);
  } catch {
    return null;
  }
}
async function bytesOf(queue: CommandQueue): Promise<Uint8Array> {
  const read = async (offset: number) =>
    (await queue.ask({ type: 'readStore', offset }, answerTimeoutMs, readTries)) as AnswerTo<'storeChunk'>;
  const first = await read(0);
  return readAll(first.length, async (offset) => (offset === 0 ? first : read(offset)));
}
interface Way {
  readonly queue: CommandQueue;
  readonly clock: Clock;
}
/** Throws CalibrationRefused when it does not fit. Rejects with RigError; what the rig kept before then still counts. */
export async function writeKept(way: Way, store: Store, descriptor: Descriptor): Promise<void> {
  const bytes = storeBytes(store, descriptor);
  try {
    for (let offset = 0; offset < bytes.length; offset += chunkBytes)
      await patiently(way, {
        type: 'writeStore',
        offset,
        bytes: bytes.slice(offset, offset + chunkBytes),
      });
    await patiently(way, { type: 'commitStore', length: bytes.length, crc: crc16(bytes) });
    await requireSame(way, bytes);
  } catch (cause) {
    throw notStored(cause);
  }
}
/** The chip is still writing the piece before: asked again until it is through. */
async function patiently({ queue, clock }: Way, command: Command): Promise<unknown> {
  const endMs = clock.now() + busyForMs;
  for (;;) {
    try {
      return await queue.ask(command);
    } catch (error) {
      const busy = error instanceof RefusedError && error.reason === reasonCode.busy;
      if (!busy || clock.now() >= endMs) throw error;
      await new Promise<void>((done) => clock.after(busyEveryMs, done));
    }
  }
}
async function requireSame(way: Way, wanted: Uint8Array): Promise<void> {
  await patiently(way, { type: 'readStore', offset: 0 });
  const found = await bytesOf(way.queue);
  if (found.length === wanted.length && found.every((byte, i) => byte === wanted[i])) return;
  throw new RigError('refused', 'What the rig kept is not what it was given.');
}
const notStored = (cause: unknown): RigError => {
  const { code } = cause instanceof RigError ? cause : { code: 'refused' as const };
  const why = cause instanceof Error ? cause.message : String(cause);
  return new RigError(
    code,
    `The calibration was not stored; what the rig kept before still counts. ${why} Calibrate again.`,
    { cause },
  );
};
