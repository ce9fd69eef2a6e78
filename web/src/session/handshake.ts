// SPDX-License-Identifier: MIT
// From an open line to a known rig: hello until it answers, version rules, descriptor in chunks, store. A board
// may be deaf for two seconds after its port was opened. It reads; it switches nothing.
import { reasonCode, wire } from '#protocol/codes';
import type { Descriptor, Store } from '#core/samples/rig-description';
import type { Clock } from './clock.ts';
import { answerTimeoutMs, type AnswerTo, type CommandQueue } from './command-queue.ts';
import { readDescriptor, readStore } from './descriptor-reader.ts';
import { RefusedError, RigError } from './rig-error.ts';
import type { RigLine } from './rig-line.ts';

export const helloEveryMs = 250;
export const helloForMs = 5000;
/** A piece of the rig's memory may be lost on a bad cable several times in a row before the rig counts as mute. */
const readTries = 5;

export interface Known {
  readonly hello: AnswerTo<'helloBack'>;
  readonly descriptor: Descriptor;
  readonly store: Store | null;
  /** Sentences a person should read, such as a store that can't be read. */
  readonly notes: readonly string[];
}
interface Way {
  readonly line: RigLine;
  readonly queue: CommandQueue;
  readonly clock: Clock;
}
/** Rejects with RigError 'notARig', 'newerProtocol', 'olderProtocol', 'badDescriptor', 'timeout', 'linkLost'. */
export async function shakeHands(way: Way): Promise<Known> {
  const hello = await greet(way);
  const descriptorBytes = await readAll(hello.descriptorLength, (offset) =>
    descriptorChunk(way.queue, offset),
  );
  const descriptor = readDescriptor(descriptorBytes, hello.descriptorCrc);
  const { store, note } = readStore(await storeBytes(way.queue));
  return { hello, descriptor, store, notes: note ? [note] : [] };
}
async function greet(way: Way): Promise<AnswerTo<'helloBack'>> {
  const { line, clock } = way;
  const endMs = clock.now() + helloForMs;
  while (clock.now() < endMs) {
    await line.restart();
    const answer = await helloOnce(way);
    if (answer) return versionAgreed(answer);
  }
  throw new RigError('notARig', silence(line));
}
async function helloOnce({ queue }: Way): Promise<AnswerTo<'helloBack'> | null> {
  const { protocolMajor: major, protocolMinor: minor } = wire;
  try {
    return (await queue.ask({ type: 'hello', major, minor }, helloEveryMs)) as AnswerTo<'helloBack'>;
  } catch (error) {
    if (error instanceof RefusedError && error.reason === reasonCode.newerMajor)
      throw new RigError(
        'olderProtocol',
        `The rig speaks version ${error.detail} of the protocol, this program version ${major}.`,
        { cause: error },
      );
    if (error instanceof RigError && error.code === 'timeout') return null;
    throw error;
  }
}
function versionAgreed(hello: AnswerTo<'helloBack'>): AnswerTo<'helloBack'> {
  if (hello.major > wire.protocolMajor)
    throw new RigError(
      'newerProtocol',
      `The rig speaks version ${hello.major} of the protocol, this program version ${wire.protocolMajor}.`,
    );
  return hello;
}
const silence = ({ faults }: RigLine): string =>
  faults.bytesIn === 0
    ? 'The device at the other end does not answer.'
    : `The device at the other end sends bytes (${faults.bytesIn} so far) but does not answer as a rig.`;

type Chunk = { readonly offset: number; readonly bytes: Uint8Array };
async function readAll(length: number, read: (offset: number) => Promise<Chunk>): Promise<Uint8Array> {
  const all = new Uint8Array(length);
  for (let at = 0; at < length;) {
    const { offset, bytes } = await read(at);
    if (offset !== at || bytes.length === 0 || at + bytes.length > length)
      throw new RigError('badDescriptor', `The rig sent a wrong piece of its memory at byte ${at}.`);
    all.set(bytes, at);
    at += bytes.length;
  }
  return all;
}
const descriptorChunk = async (queue: CommandQueue, offset: number): Promise<Chunk> =>
  (await queue.ask(
    { type: 'readDescriptor', offset },
    answerTimeoutMs,
    readTries,
  )) as AnswerTo<'descriptorChunk'>;

async function storeBytes(queue: CommandQueue): Promise<Uint8Array> {
  const read = async (offset: number) =>
    (await queue.ask({ type: 'readStore', offset }, answerTimeoutMs, readTries)) as AnswerTo<'storeChunk'>;
  const first = await read(0);
  return readAll(first.length, async (offset) => (offset === 0 ? first : read(offset)));
}
