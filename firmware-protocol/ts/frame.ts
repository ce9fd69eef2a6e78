// SPDX-License-Identifier: MIT
// Puts a payload into a frame: payload, CRC high byte first, stuffed, one zero behind it.
// It does not know what a payload says. frame-decoder.ts is the way back.
import { encodeCobs } from './cobs.ts';
import { crc16 } from './crc.ts';
import { wire } from './generated-messages.ts';

/** One frame, its delimiter included. Throws RangeError when the payload is empty or too long. */
export function encodeFrame(payload: Uint8Array): Uint8Array {
  if (payload.length === 0 || payload.length > wire.maxPayloadBytes)
    throw new RangeError(`A payload has 1 to ${wire.maxPayloadBytes} bytes, not ${payload.length}`);
  const crc = crc16(payload);
  const stuffed = encodeCobs(Uint8Array.of(...payload, crc >> 8, crc & 0xff));
  const frame = new Uint8Array(stuffed.length + 1);
  frame.set(stuffed);
  return frame;
}
