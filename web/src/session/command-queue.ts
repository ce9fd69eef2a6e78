// SPDX-License-Identifier: MIT
// One command at a time: gives it an id, waits for its answer, turns a nak into words, gives up after 300 ms and
// asks again where the rig may safely be asked twice. It does not know what commands mean.
import { reasonCode, reasonWords } from '#protocol/codes';
import type { CommandMessage, Message } from '#protocol/messages';
import type { Clock } from './clock.ts';
import { RefusedError, RigError } from './rig-error.ts';
import type { RigLine } from './rig-line.ts';

type WithoutId<M> = M extends { id: number } ? Omit<M, 'id'> : never;
/** Any command but the beat, which goes its own way and has no id. */
export type Command = WithoutId<CommandMessage>;
export type AnswerTo<M extends Message['type']> = Extract<Message, { type: M }>;

export const answerTimeoutMs = 300;
const usualTries = 2;
/** Repeating these could lengthen what was meant to be timed, or be refused because the first one worked. */
const onceOnly: ReadonlySet<string> = new Set([
  'load',
  'burst',
  'failSafeTest',
  'feed',
  'switch',
  'commitStore',
]);
const answers: Readonly<Record<string, string>> = {
  hello: 'helloBack',
  readDescriptor: 'descriptorChunk',
  readCounters: 'counters',
  readState: 'state',
  readStore: 'storeChunk',
};
interface Waiting {
  readonly id: number;
  readonly command: Command;
  readonly settle: (answer: Message | null) => void;
  readonly fail: (error: RigError) => void;
}
export class CommandQueue {
  /** Answers that did not come in time. */
  timeouts = 0;
  private lastId = 0;
  private tail: Promise<unknown> = Promise.resolve();
  private waiting: Waiting | null = null;
  private closed: RigError | null = null;

  constructor(
    private readonly line: RigLine,
    private readonly clock: Clock,
  ) {}
  /** `tries` at most, one where asking twice is not safe. Rejects with RefusedError, or RigError 'timeout', 'wrongSession', 'linkLost'. */
  ask(command: Command, timeoutMs = answerTimeoutMs, tries = usualTries): Promise<Message> {
    const turn = this.tail.then(() => this.askNow(command, timeoutMs, tries));
    this.tail = turn.catch(() => {});
    return turn;
  }
  /** Takes a message if it answers what is waited for; answers nobody waits for are dropped. */
  take(message: Message): boolean {
    const { waiting } = this;
    if (message.type === 'nak' && message.id === 0) return false;
    if (!waiting || !('id' in message) || message.id !== waiting.id) return isAnswer(message);
    if (message.type === 'nak') waiting.fail(refusal(waiting.command, message));
    else if (message.type === (answers[waiting.command.type] ?? 'ack')) waiting.settle(message);
    else return false;
    return true;
  }
  /** Fails what waits and all that is asked from now on. */
  close(error: RigError): void {
    this.closed = error;
    this.waiting?.fail(error);
  }
  /** For a line that was opened anew. */
  reopen(): void {
    this.closed = null;
  }
  private async askNow(command: Command, timeoutMs: number, tries: number): Promise<Message> {
    const most = onceOnly.has(command.type) ? 1 : tries;
    for (let attempt = 1; attempt <= most; attempt++) {
      const answer = await this.exchange(command, timeoutMs);
      if (answer) return answer;
      this.timeouts++;
    }
    throw new RigError('timeout', `The rig did not answer "${command.type}" within ${timeoutMs} ms.`);
  }
  private exchange(command: Command, timeoutMs: number): Promise<Message | null> {
    if (this.closed) return Promise.reject(this.closed);
    const id = (this.lastId = (this.lastId % 255) + 1);
    return new Promise<Message | null>((resolve, reject) => {
      const cancel = this.clock.after(timeoutMs, () => settle(null));
      const done = () => {
        cancel();
        this.waiting = null;
      };
      const settle = (answer: Message | null) => {
        done();
        resolve(answer);
      };
      const fail = (error: RigError) => {
        done();
        reject(error);
      };
      this.waiting = { id, command, settle, fail };
      this.line.send({ ...command, id } as Message).catch(fail);
    });
  }
}
const isAnswer = (message: Message): boolean =>
  message.type === 'ack' ||
  message.type === 'nak' ||
  (Object.values(answers).includes(message.type) && !(message.type === 'state' && message.id === 0));

function refusal(command: Command, nak: AnswerTo<'nak'>): RigError {
  if (nak.reason === reasonCode.wrongSession)
    return new RigError('wrongSession', 'Another session is live on this rig.');
  return new RefusedError(command.type, nak.reason, nak.detail, reasonWords(nak.reason));
}
