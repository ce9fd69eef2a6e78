// SPDX-License-Identifier: MIT
// Cuts a stream of bytes, in chunks of any size, into payloads. What is damaged comes out as a fault and the
// decoder is in step again at the next zero. It holds at most one frame; it does not know what a payload says.
import { decodeCobs } from './cobs.ts';
import { crc16 } from './crc.ts';
import { wire } from './generated-messages.ts';

/**
 * cobs: the stuffing contradicts itself; empty: shorter than one byte and its CRC; crc: the CRC does not agree;
 * tooLong: more bytes than a frame may have before the next zero.
 */
export type FrameFaultReason = 'cobs' | 'empty' | 'crc' | 'tooLong';
export interface FrameFault {
  readonly kind: 'fault';
  readonly reason: FrameFaultReason;
  /** What lay between the zeros; for tooLong the first bytes of it. */
  readonly bytes: Uint8Array;
}
export interface ReceivedFrame {
  readonly kind: 'frame';
  readonly payload: Uint8Array;
}
export type FrameResult = ReceivedFrame | FrameFault;

const stuffedMax = wire.maxFrameBytes - 1;

function opened(stuffed: Uint8Array): FrameResult {
  const fault = (reason: FrameFaultReason): FrameFault => ({ kind: 'fault', reason, bytes: stuffed });
  const plain = decodeCobs(stuffed);
  if (plain === null) return fault('cobs');
  if (plain.length < 3) return fault('empty');
  // Over payload and CRC together the remainder is zero.
  if (crc16(plain) !== 0) return fault('crc');
  return { kind: 'frame', payload: plain.subarray(0, -2) };
}

export class FrameDecoder {
  readonly #held = new Uint8Array(stuffedMax);
  #length = 0;
  #overflown = false;

  /** Takes the next bytes of the line; gives what they complete, in order. Zeros in a row mean nothing. */
  push(chunk: Uint8Array): FrameResult[] {
    const results: FrameResult[] = [];
    for (const byte of chunk) {
      if (byte !== 0) this.#hold(byte);
      else if (this.#length > 0) results.push(this.#close());
    }
    return results;
  }

  /** Forgets a frame begun: for a line that was closed and opened again. */
  reset(): void {
    this.#length = 0;
    this.#overflown = false;
  }

  #hold(byte: number): void {
    if (this.#length < stuffedMax) this.#held[this.#length++] = byte;
    else this.#overflown = true;
  }

  #close(): FrameResult {
    const stuffed = this.#held.slice(0, this.#length);
    const overflown = this.#overflown;
    this.reset();
    return overflown ? { kind: 'fault', reason: 'tooLong', bytes: stuffed } : opened(stuffed);
  }
}
