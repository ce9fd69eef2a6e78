// SPDX-License-Identifier: MIT
// Messages against golden vectors written by other means, every message there and back with any values,
// rubbish from the line, and values that do not fit.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bytesOf, hexOf, vectorRows } from '../vectors/vector-rows.ts';
import { messageLayouts } from './generated-messages.ts';
import type { FieldLayout, Message, MessageLayout, MessageName } from './generated-messages.ts';
import { encodeMessage, isMessageFault, parseMessage } from './messages.ts';

const golden = vectorRows('messages.txt');
const plain = (message: object): unknown =>
  JSON.parse(
    JSON.stringify(message, (_key, value: unknown) =>
      ArrayBuffer.isView(value) ? [...(value as Uint8Array)] : value,
    ),
  );

describe('golden messages', () => {
  it.each(golden)('%s', (_name, told, payload) => {
    const message = JSON.parse(told) as Message;
    expect(hexOf(encodeMessage(message))).toBe(payload);
    expect(plain(parseMessage(bytesOf(payload)))).toEqual(message);
  });
  it('leave no message out', () => {
    const covered = new Set(golden.map(([name]) => name.split(':')[0]));
    expect(Object.keys(messageLayouts).filter((name) => !covered.has(name))).toEqual([]);
  });
});

describe('sound frames without a message', () => {
  it.each(vectorRows('odd-payloads.txt'))('%s', (_name, payload, _frame, fault) => {
    const parsed = parseMessage(bytesOf(payload));
    const told =
      isMessageFault(parsed) && ('name' in parsed ? `${parsed.fault}:${parsed.name}` : parsed.fault);
    expect(told).toBe(fault);
  });
  it('are told from an empty payload', () =>
    expect(parseMessage(new Uint8Array())).toEqual({ fault: 'empty' }));
});

const cells = {
  u8: fc.integer({ min: 0, max: 0xff }),
  u16: fc.integer({ min: 0, max: 0xffff }),
  u32: fc.integer({ min: 0, max: 0xffffffff }),
};
const widths = { u8: 1, u16: 2, u32: 4 };
function anyField(field: FieldLayout, room: number): fc.Arbitrary<number | number[]> {
  if (field.shape === 'one') return cells[field.cell];
  const longest = field.shape === 'fixed' ? field.count : Math.floor(room / widths[field.cell]);
  return fc.array(cells[field.cell], {
    minLength: field.shape === 'fixed' ? longest : 0,
    maxLength: longest,
  });
}
function anyMessage(type: MessageName): fc.Arbitrary<Message> {
  const layout: MessageLayout = messageLayouts[type];
  const fields = layout.fields.map((field) => [field.name, anyField(field, 239 - layout.fixedBytes)]);
  return fc.record({
    type: fc.constant(type),
    ...Object.fromEntries(fields),
  }) as unknown as fc.Arbitrary<Message>;
}

describe('any message comes back as it was', () => {
  it.each(Object.keys(messageLayouts) as MessageName[])('%s', (type) => {
    fc.assert(
      fc.property(anyMessage(type), (message) => {
        expect(plain(parseMessage(encodeMessage(message)))).toEqual(message);
      }),
    );
  });
});

it('parses whatever comes without an exception', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), (noise) => {
      const parsed = parseMessage(noise);
      expect(
        isMessageFault(parsed) || hexOf(encodeMessage(parsed)) === hexOf(noise) || noise.length > 240,
      ).toBe(true);
    }),
  );
});

it('reads a payload that lies at an odd place of a larger buffer', () => {
  const payload = bytesOf(golden.find(([name]) => name === 'burstBlock')?.[2] ?? '');
  const shifted = new Uint8Array(payload.length + 3);
  shifted.set(payload, 3);
  expect(plain(parseMessage(shifted.subarray(3)))).toEqual(plain(parseMessage(payload)));
});

describe('a value that does not fit is an error of the caller', () => {
  it.each([
    ['too large', { type: 'stream', id: 256, on: 1 }, 'stream.id: 256 does not fit u8'],
    [
      'negative',
      { type: 'drive', id: 1, output: 1, width: -1, rampMs: 0, holdMs: 0 },
      'drive.width: -1 does not fit u16',
    ],
    ['broken', { type: 'goLive', id: 1, session: 0.5 }, 'goLive.session: 0.5 does not fit u32'],
    ['not a number', { type: 'goLive', id: 1, session: NaN }, 'goLive.session: NaN does not fit u32'],
    ['missing', { type: 'stream', id: 1 }, 'stream.on must be a number'],
    [
      'too short',
      { type: 'scanList', id: 1, fast: [0, 1, 2], slow: 7 },
      'scanList.fast takes 4 values, not 3',
    ],
    [
      'no list',
      { type: 'writeStore', id: 1, offset: 0, bytes: 7 },
      'writeStore.bytes must be a list of numbers',
    ],
    [
      'too long',
      { type: 'writeStore', id: 1, offset: 0, bytes: new Uint8Array(237) },
      'writeStore is longer than 240 bytes',
    ],
    ['unknown', { type: 'lift', id: 1 }, 'There is no message "lift"'],
  ])('%s', (_what, message, words) => {
    expect(() => encodeMessage(message as unknown as Message)).toThrow(new RangeError(words));
  });
});
