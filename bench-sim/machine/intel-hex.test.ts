// SPDX-License-Identifier: MIT
// Good and damaged programs; nrf-intel-hex is the independent reader of the good one.
import { readFileSync } from 'node:fs';
import MemoryMap from 'nrf-intel-hex';
import { describe, expect, it } from 'vitest';
import { readHex } from './intel-hex.ts';

const text = readFileSync(new URL('./fixtures/serial-echo.hex', import.meta.url), 'utf8');
const lines = text.trim().split(/\r?\n/);
const damaged = (line: number, change: (text: string) => string) =>
  lines.map((content, i) => (i === line - 1 ? change(content) : content)).join('\n');

describe('reading a program', () => {
  it('agrees with an independent reader', () => {
    const reference = MemoryMap.fromHex(text);
    const program = readHex(text);
    const bytes = new Uint8Array(program.words.buffer);
    let size = 0;
    for (const [address, block] of reference) {
      expect(bytes.subarray(address, address + block.length)).toEqual(block);
      size += block.length;
    }
    expect(program.size).toBe(size);
    expect(bytes.subarray(size).every((byte) => byte === 0xff)).toBe(true);
  });

  it.each([
    [
      'a changed digit',
      damaged(3, (t) => `${t.slice(0, 12)}${t[12] === '0' ? '1' : '0'}${t.slice(13)}`),
      /line 3.*sum/,
    ],
    ['a short record', damaged(2, (t) => t.slice(0, -4)), /line 2.*data bytes/],
    ['a half pair', damaged(4, (t) => t.slice(0, -1)), /line 4.*pairs/],
    ['a foreign line', damaged(1, () => 'hello'), /line 1.*colon/],
    ['no end record', lines.slice(0, -1).join('\n'), /no end record/],
    ['an empty file', '', /no end record/],
    ['only an end record', ':00000001FF', /no program/],
    ['text after the end', `${text.trim()}\n${lines[0]}`, /after the end/],
    ['an address beyond the flash', ':020000040001F9\n:0100000000FF\n:00000001FF', /line 2.*beyond/],
    ['an unknown record', ':00000009F7\n:00000001FF', /line 1.*type 9/],
  ])('refuses %s and says where', (_what, bad, words) => {
    expect(() => readHex(bad)).toThrow(words);
  });
});
