// SPDX-License-Identifier: MIT
// Reads an Intel HEX program for the chip, checking every record, and says which line is wrong and why.
// It does not know what the program does.
import { FLASH_BYTES } from './registers.ts';

export class HexError extends Error {
  override readonly name = 'HexError';
}
export interface Program {
  /** The flash as 16-bit words, blank (0xFFFF) where nothing was given. */
  readonly words: Uint16Array<ArrayBuffer>;
  /** Bytes given. */
  readonly size: number;
}
const ADVICE = 'Build the firmware again or take the committed file.';

function fail(line: number, what: string): never {
  throw new HexError(`The firmware file is damaged at line ${line}: ${what}. ${ADVICE}`);
}

/** The bytes of one record, its sum checked. */
function recordBytes(text: string, line: number): Uint8Array {
  if (!text.startsWith(':')) fail(line, 'it does not start with a colon');
  if (!/^:(?:[0-9A-Fa-f]{2})+$/.test(text)) fail(line, 'it is not whole pairs of hexadecimal digits');
  const bytes = Uint8Array.from(text.slice(1).match(/../g) ?? [], (pair) => Number.parseInt(pair, 16));
  if (bytes.length < 5 || bytes.length !== bytes[0] + 5) {
    fail(line, `it should hold ${bytes[0]} data bytes but holds ${bytes.length - 5}`);
  }
  const sum = bytes.reduce((total, byte) => (total + byte) & 0xff, 0);
  if (sum !== 0) fail(line, 'its check sum does not match');
  return bytes;
}

interface Reading {
  readonly flash: Uint8Array;
  base: number;
  size: number;
  ended: boolean;
}

function placeData(reading: Reading, bytes: Uint8Array, line: number): void {
  const address = reading.base + ((bytes[1] << 8) | bytes[2]);
  const length = bytes[0];
  if (address + length > FLASH_BYTES) {
    fail(
      line,
      `address 0x${(address + length - 1).toString(16)} is beyond the chip's ${FLASH_BYTES} bytes of flash`,
    );
  }
  reading.flash.set(bytes.subarray(4, 4 + length), address);
  reading.size += length;
}

function takeRecord(reading: Reading, bytes: Uint8Array, line: number): void {
  const type = bytes[3];
  const word = (bytes[4] << 8) | bytes[5];
  if (type === 0) placeData(reading, bytes, line);
  else if (type === 1) reading.ended = true;
  else if (type === 2) reading.base = word * 16;
  else if (type === 4) reading.base = word * 65536;
  else if (type !== 3 && type !== 5) fail(line, `record type ${type} is unknown`);
}

export function readHex(text: string): Program {
  const flash = new Uint8Array(FLASH_BYTES).fill(0xff);
  const reading: Reading = { flash, base: 0, size: 0, ended: false };
  const lines = text.split(/\r?\n/);
  lines.forEach((content, index) => {
    const trimmed = content.trim();
    if (trimmed === '') return;
    if (reading.ended) fail(index + 1, 'it comes after the end record');
    takeRecord(reading, recordBytes(trimmed, index + 1), index + 1);
  });
  if (!reading.ended) {
    throw new HexError(`The firmware file is cut off: no end record after line ${lines.length}. ${ADVICE}`);
  }
  if (reading.size === 0) throw new HexError(`The firmware file holds no program. ${ADVICE}`);
  return { words: new Uint16Array(flash.buffer), size: reading.size };
}
