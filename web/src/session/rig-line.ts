// SPDX-License-Identifier: MIT
// Messages over a ByteLink: bytes to frames to messages and back. What is damaged or unknown is counted, never
// thrown. It does not know what a message is for.
import { encodeFrame } from '#protocol/frame';
import { FrameDecoder } from '#protocol/frame-decoder';
import type { Message } from '#protocol/messages';
import { encodeMessage, isMessageFault, parseMessage } from '#protocol/messages';
import type { ByteLink } from './byte-link.ts';

export interface LineFaults {
  /** Frames dropped for stuffing, CRC or length. */
  badFrames: number;
  /** Sound frames that this version can't read. */
  unknownMessages: number;
  /** Sound frames of a known kind with a wrong length. */
  badLengths: number;
  bytesIn: number;
  messagesIn: number;
}
export class RigLine {
  readonly faults: LineFaults = {
    badFrames: 0,
    unknownMessages: 0,
    badLengths: 0,
    bytesIn: 0,
    messagesIn: 0,
  };
  private readonly decoder = new FrameDecoder();
  private receive: (message: Message) => void = () => {};

  constructor(private readonly link: ByteLink) {
    link.onBytes((bytes) => this.push(bytes));
  }
  onMessage(receive: (message: Message) => void): void {
    this.receive = receive;
  }
  /** Rejects with RigError 'linkLost' when the line is gone. */
  send(message: Message): Promise<void> {
    return this.link.send(encodeFrame(encodeMessage(message)));
  }
  /** Forgets a frame begun, and ends whatever lies half-sent in the rig's own decoder. */
  async restart(): Promise<void> {
    this.decoder.reset();
    await this.link.send(Uint8Array.of(0));
  }
  private push(bytes: Uint8Array): void {
    this.faults.bytesIn += bytes.length;
    for (const result of this.decoder.push(bytes)) {
      if (result.kind === 'fault') this.faults.badFrames++;
      else this.take(result.payload);
    }
  }
  private take(payload: Uint8Array): void {
    const message = parseMessage(payload);
    if (isMessageFault(message)) {
      if (message.fault === 'unknownMessage') this.faults.unknownMessages++;
      else this.faults.badLengths++;
      return;
    }
    this.faults.messagesIn++;
    this.receive(message);
  }
}
