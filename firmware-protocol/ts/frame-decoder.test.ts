// SPDX-License-Identifier: MIT
// Frames against golden vectors, in any chunks, among noise, with errors, and with what may never come.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bytesOf, hexOf, vectorRows } from '../vectors/vector-rows.ts';
import { encodeFrame } from './frame.ts';
import { FrameDecoder } from './frame-decoder.ts';
import type { FrameResult } from './frame-decoder.ts';

const told = (result: FrameResult): string =>
  result.kind === 'frame' ? `frame:${hexOf(result.payload)}` : `fault:${result.reason}`;
const decoded = (chunks: readonly Uint8Array[]): string[] => {
  const decoder = new FrameDecoder();
  return chunks.flatMap((chunk) => decoder.push(chunk)).map(told);
};
const payloads = fc.uint8Array({ minLength: 1, maxLength: 240 });
const joined = (parts: readonly Uint8Array[]): Uint8Array =>
  Uint8Array.from(parts.flatMap((part) => Array.from(part)));
const golden = vectorRows('messages.txt');

describe('golden frames', () => {
  it.each(golden)('%s', (_name, _message, payload, frame) => {
    expect(hexOf(encodeFrame(bytesOf(payload)))).toBe(frame);
    expect(decoded([bytesOf(frame)])).toEqual([`frame:${payload}`]);
  });
});

describe('golden streams', () => {
  it.each(vectorRows('streams.txt'))('%s', (_name, bytes, results) => {
    const wanted = results === '-' ? [] : results.split(' ');
    expect(decoded([bytesOf(bytes)])).toEqual(wanted);
    expect(decoded(Array.from(bytesOf(bytes), (byte) => Uint8Array.of(byte)))).toEqual(wanted);
  });
});

it('gives the same frames in whatever chunks they come', () => {
  const cuts = fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 30 });
  fc.assert(
    fc.property(fc.array(payloads, { maxLength: 6 }), cuts, (list, sizes) => {
      const line = joined(list.map(encodeFrame));
      const chunks: Uint8Array[] = [];
      let at = 0;
      for (const size of sizes) chunks.push(line.subarray(at, (at += size)));
      chunks.push(line.subarray(at));
      expect(decoded(chunks)).toEqual(list.map((payload) => `frame:${hexOf(payload)}`));
    }),
  );
});

it('is in step again at the zero after any noise', () => {
  const noise = fc.uint8Array({ maxLength: 2000 });
  fc.assert(
    fc.property(noise, payloads, (rubbish, payload) => {
      const results = decoded([rubbish, Uint8Array.of(0), encodeFrame(payload)]);
      expect(results.at(-1)).toBe(`frame:${hexOf(payload)}`);
    }),
  );
});

it('holds no more than one frame however long the zero stays away', () => {
  const decoder = new FrameDecoder();
  for (let count = 0; count < 1000; count += 1)
    expect(decoder.push(new Uint8Array(1024).fill(7))).toEqual([]);
  const [fault] = decoder.push(Uint8Array.of(0));
  expect(fault).toMatchObject({ kind: 'fault', reason: 'tooLong' });
  expect(fault.kind === 'fault' && fault.bytes.length).toBe(243);
});

it('never takes a golden frame with one bit flipped for a frame', () => {
  for (const [, , , hex] of golden) {
    const frame = bytesOf(hex);
    for (let bit = 0; bit < (frame.length - 1) * 8; bit += 1) {
      const damaged = frame.slice();
      damaged[bit >> 3] ^= 1 << (bit & 7);
      expect(decoded([damaged]).filter((result) => result.startsWith('frame'))).toEqual([]);
    }
  }
});

it('keeps its own copy: what it gave does not change with the next bytes', () => {
  const decoder = new FrameDecoder();
  const [first] = decoder.push(encodeFrame(Uint8Array.of(1, 2, 3)));
  const [fault] = decoder.push(Uint8Array.of(9, 1, 2, 0));
  decoder.push(encodeFrame(Uint8Array.of(9, 9, 9)));
  expect(told(first)).toBe('frame:010203');
  expect(fault).toEqual({ kind: 'fault', reason: 'cobs', bytes: Uint8Array.of(9, 1, 2) });
});

it('forgets a frame begun when the line is opened again', () => {
  const decoder = new FrameDecoder();
  decoder.push(Uint8Array.of(5, 1, 2));
  decoder.reset();
  expect(decoder.push(encodeFrame(Uint8Array.of(4))).map(told)).toEqual(['frame:04']);
});

it.each([0, 241])('refuses to frame %i bytes', (length) => {
  expect(() => encodeFrame(new Uint8Array(length))).toThrow(/1 to 240 bytes, not/);
});
