// SPDX-License-Identifier: MIT
// For tests: a rig that answers by a script over an in-memory link, so that each way of failing can be played. It
// keeps no safety rule: the compiled firmware on the emulator is tested for those elsewhere.
import { crc16 } from '#protocol/crc';
import { encodeFrame } from '#protocol/frame';
import { FrameDecoder } from '#protocol/frame-decoder';
import { encodeMessage, isMessageFault, parseMessage, type Message } from '#protocol/messages';
import { eventCode, feedLevelCode, outputBitCode, stateCode, wire } from '#protocol/codes';
import { scanBlock, testRig } from '#core/samples/scan-block-fixture';
import type { ByteLink } from './byte-link.ts';
import type { AnswerTo } from './command-queue.ts';
import type { Clock } from './clock.ts';
import { RigError } from './rig-error.ts';

/** Answers a message, or `undefined` to let the usual answer be given; an empty list is silence. */
export type Script = (message: Message) => readonly Message[] | undefined;
const blockMs = (wire.scanTicks * wire.scansPerBlock) / 2000;
const chunkBytes = 192;

export class ScriptedRig implements ByteLink {
  readonly received: Message[] = [];
  script: Script = () => undefined;
  descriptor: string = JSON.stringify({ ...testRig().descriptor, outputs: someOutputs });
  store = '';
  /** Codes of fast slots and multiplexer inputs in every block. */
  block: Parameters<typeof scanBlock>[0] = {
    codes: { a: 700, b: 600, c: 700, d: 200 },
    mux: { 0: 512, 1: 512 },
  };
  outputs = (1 << outputBitCode.stopSeen) as number;
  state: number = stateCode.safe;
  edgesA = 0;
  blocksSent = 0;
  private readonly decoder = new FrameDecoder();
  private receive: (bytes: Uint8Array) => void = () => {};
  private lost: (cause: unknown) => void = () => {};
  private isOpen = false;
  private stopStream: (() => void) | null = null;

  constructor(private readonly clock: Clock) {}
  open(): Promise<void> {
    this.isOpen = true;
    return Promise.resolve();
  }
  close(): Promise<void> {
    this.isOpen = false;
    this.stopStream?.();
    this.stopStream = null;
    return Promise.resolve();
  }
  send(bytes: Uint8Array): Promise<void> {
    if (!this.isOpen) return Promise.reject(new RigError('linkLost'));
    for (const result of this.decoder.push(bytes)) if (result.kind === 'frame') this.take(result.payload);
    return Promise.resolve();
  }
  onBytes(receive: (bytes: Uint8Array) => void): void {
    this.receive = receive;
  }
  onLost(listener: (cause: unknown) => void): void {
    this.lost = listener;
  }
  unplug(): void {
    this.isOpen = false;
    this.stopStream?.();
    this.lost(new Error('unplugged'));
  }
  tell(...messages: readonly Message[]): void {
    for (const message of messages) this.raw(encodeFrame(encodeMessage(message)));
  }
  raw(bytes: Uint8Array): void {
    this.receive(bytes);
  }
  trip(code: number): void {
    this.state = stateCode.tripped;
    this.tell(this.stateMessage(0, code));
  }
  sentOf<M extends Message['type']>(type: M): AnswerTo<M>[] {
    return this.received.filter((message): message is AnswerTo<M> => message.type === type);
  }
  skipBlocks(count: number): void {
    this.blocksSent += count;
  }
  private take(payload: Uint8Array): void {
    const message = parseMessage(payload);
    if (isMessageFault(message)) return;
    this.received.push(message);
    const answers = this.script(message) ?? this.usual(message);
    this.clock.after(1, () => this.tell(...answers));
  }
  private usual(message: Message): readonly Message[] {
    switch (message.type) {
      case 'hello':
        return [this.helloBack(message.id)];
      case 'readDescriptor':
        return [
          {
            type: 'descriptorChunk',
            id: message.id,
            offset: message.offset,
            bytes: chunk(this.descriptor, message.offset),
          },
        ];
      case 'readStore': {
        const length = this.store.length;
        return [
          {
            type: 'storeChunk',
            id: message.id,
            offset: message.offset,
            length,
            bytes: chunk(this.store, message.offset),
          },
        ];
      }
      case 'readState':
        return [this.stateMessage(message.id)];
      case 'beat':
        return [
          { type: 'beatBack', counter: message.counter, tick: this.tick(), worstGap: 20, state: this.state },
        ];
      default:
        return 'id' in message ? [...this.done(message)] : [];
    }
  }
  private done(message: Message & { id: number }): Message[] {
    const ack: Message = { type: 'ack', id: message.id, command: encodeMessage(message)[0] };
    if (message.type === 'stream') this.streaming(message.on === 1);
    if (message.type === 'goLive') this.state = stateCode.live;
    if (message.type === 'clearTrip') this.state = stateCode.safe;
    if (message.type === 'drive' && message.output === 1) this.edgesA += 7;
    if (message.type === 'feed' && message.level === feedLevelCode.limited)
      return [ack, this.event(eventCode.firstPower, 40)];
    if (message.type === 'failSafeTest') return [ack, this.event(eventCode.failSafe, 180)];
    if (message.type === 'safeAll' && this.state === stateCode.live) this.bringBack();
    return [ack];
  }
  private bringBack(): void {
    this.state = stateCode.ending;
    this.clock.after(2000, () => {
      this.state = stateCode.safe;
      this.tell(this.stateMessage(0));
    });
  }
  private streaming(on: boolean): void {
    this.stopStream?.();
    this.stopStream = on ? this.clock.every(blockMs, () => this.sendBlock()) : null;
  }
  private sendBlock(): void {
    const scan = this.blocksSent++ * wire.scansPerBlock;
    const fields = scanBlock({
      ...this.block,
      scan,
      tick: scan * wire.scanTicks,
      outputs: this.outputs,
      state: this.state === stateCode.tripped ? stateCode.safe : this.state,
      edgesA: this.edgesA,
    });
    this.tell({ type: 'scanBlock', ...fields } as Message);
  }
  event(kind: number, value: number): Message {
    return { type: 'event', kind, tick: this.tick(), value };
  }
  private tick(): number {
    return Math.round(this.clock.now() * 2000) >>> 0;
  }
  private stateMessage(id: number, trip = 0): Message {
    const nothing = { tripTap: 255, tripRaw: 0, tripTick: 0, missing: 0, throttleCap: 300 };
    return { type: 'state', id, state: this.state, trip, ...nothing };
  }
  private helloBack(id: number): Message {
    const bytes = new TextEncoder().encode(this.descriptor);
    const lengths = { descriptorLength: bytes.length, descriptorCrc: crc16(bytes) };
    return {
      type: 'helloBack',
      id,
      major: 1,
      minor: 0,
      firmware: [0, 1, 0],
      resetCause: 2,
      ...lengths,
      tick: this.tick(),
    };
  }
}
const chunk = (text: string, offset: number): Uint8Array =>
  new TextEncoder().encode(text).slice(offset, offset + chunkBytes);
const someOutputs = ['steering', 'throttle', 'load', 'feed'].map((id) => ({ id, low: 0, high: 1, unit: '' }));
