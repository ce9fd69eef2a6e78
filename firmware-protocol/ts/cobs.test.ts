// SPDX-License-Identifier: MIT
// Stuffing against published examples (vectors/cobs.txt names them) and against its own definition.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bytesOf, hexOf, vectorRows } from '../vectors/vector-rows.ts';
import { decodeCobs, encodeCobs } from './cobs.ts';

describe('published examples', () => {
  it.each(vectorRows('cobs.txt'))('%s', (_source, plain, stuffed) => {
    expect(hexOf(encodeCobs(bytesOf(plain)))).toBe(stuffed);
    const back = decodeCobs(bytesOf(stuffed));
    expect(back && hexOf(back)).toBe(plain);
  });
});

const lumpy = fc
  .array(fc.oneof(fc.constant(Uint8Array.of(0)), fc.uint8Array({ min: 1, maxLength: 600 })), { maxLength: 6 })
  .map((parts) => Uint8Array.from(parts.flatMap((part) => Array.from(part))));

describe('any bytes', () => {
  it('come back as they were', () => {
    fc.assert(
      fc.property(lumpy, (plain) => {
        expect(decodeCobs(encodeCobs(plain))).toEqual(plain);
      }),
    );
  });
  it('hold no zero when stuffed and grow by one byte in 254 at most', () => {
    fc.assert(
      fc.property(lumpy, (plain) => {
        const stuffed = encodeCobs(plain);
        expect(stuffed.includes(0)).toBe(false);
        expect(stuffed.length - plain.length).toBeGreaterThanOrEqual(1);
        expect(stuffed.length - plain.length).toBeLessThanOrEqual(Math.max(1, Math.ceil(plain.length / 254)));
      }),
    );
  });
  it('are decoded or refused, never an exception', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 600 }), (noise) => {
        const plain = decodeCobs(noise);
        expect(plain === null || plain.length < noise.length).toBe(true);
      }),
    );
  });
});

it.each([
  ['no bytes', []],
  ['a code that points beyond the end', [4, 1, 2]],
  ['a zero as code', [0, 1]],
  ['a zero among the data', [3, 1, 0]],
])('refuses %s', (_what, bytes) => expect(decodeCobs(Uint8Array.from(bytes))).toBeNull());
