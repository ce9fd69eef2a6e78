// SPDX-License-Identifier: MIT
// Where the committed firmware lies. It reads it and has it checked before a rig is made of it.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { HexError, readHex } from '#sim/machine/intel-hex';
import { BadUsage } from './bad-usage.ts';

export const firmwarePath = join(import.meta.dirname, '../../firmware-protocol/firmware/bench-marshal.hex');

/** Throws BadUsage when the file is missing or damaged. */
export function firmwareHex(path = firmwarePath): string {
  const text = content(path);
  try {
    readHex(text);
  } catch (cause) {
    if (!(cause instanceof HexError)) throw cause;
    throw new BadUsage('badFirmware', `${cause.message} The file is ${path}.`, { cause });
  }
  return text;
}
function content(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (cause) {
    throw new BadUsage(
      'badFirmware',
      `The firmware file ${path} can't be read: ${(cause as Error).message}. Take the committed file or run npm run firmware.`,
      { cause },
    );
  }
}
