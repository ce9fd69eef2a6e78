// SPDX-License-Identifier: MIT
// Reads a golden vector file into rows of columns, for tests. It knows the line format of vectors/README.md
// and nothing of frames or messages.
import { readFileSync } from 'node:fs';

/** The rows of one file, comments left out. */
export function vectorRows(file: string): string[][] {
  const lines = readFileSync(new URL(file, import.meta.url), 'utf8').split('\n');
  const rows = lines.filter((line) => line !== '' && !line.startsWith('#')).map((line) => line.split('\t'));
  if (rows.length === 0) throw new Error(`${file} holds no vectors`);
  return rows;
}

export const bytesOf = (hex: string): Uint8Array =>
  hex === '-' ? new Uint8Array() : Uint8Array.from(hex.match(/../g) ?? [], (pair) => parseInt(pair, 16));
export const hexOf = (bytes: Uint8Array): string =>
  bytes.length === 0 ? '-' : Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
