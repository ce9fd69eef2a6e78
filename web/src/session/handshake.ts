// SPDX-License-Identifier: MIT
// From an open line to a known rig: hello until it answers, version rules, descriptor in chunks, store. A board
// may be deaf for two seconds after its port was opened. It reads; it switches nothing.
import { reasonCode, wire } from '#protocol/codes';
import type { Descriptor } from '#core/samples/rig-description';
import type { Clock } from './clock.ts';
import { answerTimeoutMs, type AnswerTo, type CommandQueue } from './command-queue.ts';
import { readDescriptor } from './descriptor-reader.ts';
import { RefusedError, RigError } from './rig-error.ts';
import type { RigLine } from './rig-line.ts';
import { readAll, readTries, type Chunk } from './memory-reader.ts';
import { readKept, type Kept } from './rig-store.ts';

export const helloEveryMs = 250;
export const helloForMs = 5000;

export interface Known extends Kept {
  readonly hello: AnswerTo<'helloBack'>;
  readonly descriptor: Descriptor;
}
interface Way {
  readonly line: RigLine;
  readonly queue: CommandQueue;
  readonly clock: Clock;
  /** The day, ISO 8601, by which calibrations are old; where nobody tells it, none is. */
  readonly today?: string;
}
/** Rejects with RigError 'notARig', 'newerProtocol', 'olderProtocol', 'badDescriptor', 'timeout', 'linkLost'. */
export async function shakeHands(way: Way): Promise<Known> {
  const hello = await greet(way);
  const descriptorBytes = await readAll(hello.descriptorLength, (offset) =>
    descriptorChunk(way.queue, offset),
  );
  const descriptor = readDescriptor(descriptorBytes, hello.descriptorCrc);
  return { hello, descriptor, ...(await readKept(way.queue, descriptor, way.today)) };
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

const descriptorChunk = async (queue: CommandQueue, offset: number): Promise<Chunk> =>
  (await queue.ask(
    { type: 'readDescriptor', offset },
    answerTimeoutMs,
    readTries,
  )) as AnswerTo<'descriptorChunk'>;
