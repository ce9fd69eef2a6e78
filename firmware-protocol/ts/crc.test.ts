// SPDX-License-Identifier: MIT
// The CRC against the catalogue's check value and an independent implementation (vectors/crc.txt names them),
// and the errors that a CRC of 16 bits must catch by its mathematics.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { bytesOf, vectorRows } from '../vectors/vector-rows.ts';
import { crc16 } from './crc.ts';

it.each(vectorRows('crc.txt'))('%s', (_source, bytes, crc) => {
  expect(crc16(bytesOf(bytes)).toString(16).padStart(4, '0')).toBe(crc);
});

it('leaves no remainder over message and CRC', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 240 }), (message) => {
      const crc = crc16(message);
      expect(crc16(Uint8Array.of(...message, crc >> 8, crc & 0xff))).toBe(0);
    }),
  );
});

it('sees every burst of errors up to 16 bits long', () => {
  const burst = fc.tuple(
    fc.uint8Array({ minLength: 3, maxLength: 240 }),
    fc.nat(),
    fc.integer({ min: 1, max: 0xffff }),
  );
  fc.assert(
    fc.property(burst, ([message, place, pattern]) => {
      const damaged = message.slice();
      const at = place % (message.length - 2);
      const shifted = pattern << (place % 8);
      [16, 8, 0].forEach((shift, index) => (damaged[at + index] ^= (shifted >> shift) & 0xff));
      expect(crc16(damaged)).not.toBe(crc16(message));
    }),
  );
});
