// SPDX-License-Identifier: MIT
// CRC-32 against the check value of the catalogue of parametrised CRC algorithms (CRC-32/ISO-HDLC: CBF43926, from
// memory) and against zlib, which Node brings.
import { crc32 as zlibCrc32 } from 'node:zlib';
import { expect, it } from 'vitest';
import { crc32 } from './crc32.ts';

it('gives the check value of the catalogue', () =>
  expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926));
it('agrees with zlib on every length up to 300', () => {
  const bytes = Uint8Array.from({ length: 300 }, (_, i) => (i * 167 + 13) & 0xff);
  for (let length = 0; length <= bytes.length; length++)
    expect(crc32(bytes.subarray(0, length))).toBe(zlibCrc32(bytes.subarray(0, length)));
});
