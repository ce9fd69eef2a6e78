// SPDX-License-Identifier: MIT
// A file that keeps a virtual rig's memory from one program to the next. It knows bytes only.
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { EEPROM_BYTES } from '#sim/machine/eeprom';
import { BadUsage } from './bad-usage.ts';

/** Undefined where there is no file yet: a blank rig. Throws BadUsage. */
export function readStoreFile(path: string): Uint8Array | undefined {
  if (!existsSync(path)) return undefined;
  const bytes = new Uint8Array(reading(path, () => readFileSync(path)));
  if (bytes.length === EEPROM_BYTES) return bytes;
  throw new BadUsage(
    'badFile',
    `${path} holds ${bytes.length} bytes; the memory of a rig has ${EEPROM_BYTES}. Give --store another file, or a new name to begin with a blank rig.`,
  );
}
/** Throws BadUsage. */
export const writeStoreFile = (path: string, bytes: Uint8Array): void =>
  reading(path, () => writeFileSync(path, bytes));

function reading<T>(path: string, act: () => T): T {
  try {
    return act();
  } catch (cause) {
    const words = `The store file ${path} can't be used: ${(cause as Error).message}. Choose another place for --store.`;
    throw new BadUsage('badFile', words, { cause });
  }
}
