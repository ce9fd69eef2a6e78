// SPDX-License-Identifier: MIT
// Turns messages into payloads and payloads into messages, by the generated layouts.
// It does not know frames, order or meaning. Rubbish from the line is a typed fault, never an exception.
import { messageLayouts, wire } from './generated-messages.ts';
import type { FieldLayout, Message, MessageLayout, MessageName } from './generated-messages.ts';

export type * from './generated-messages.ts';

/** unknownMessage: skip it (a later minor version may send it); wrongLength: drop and count it. */
export type MessageFault =
  | { readonly fault: 'empty' }
  | { readonly fault: 'unknownMessage'; readonly code: number; readonly length: number }
  | {
      readonly fault: 'wrongLength';
      readonly name: MessageName;
      readonly length: number;
      readonly expected: number;
    };

type FieldValue = number | ArrayLike<number>;
const cellBytes = { u8: 1, u16: 2, u32: 4 } as const;
const cellMax = { u8: 0xff, u16: 0xffff, u32: 0xffffffff } as const;
const layouts = messageLayouts as Readonly<Record<MessageName, MessageLayout>>;
const nameOfCode = new Map(Object.entries(layouts).map(([name, { code }]) => [code, name as MessageName]));

function put(view: DataView, at: number, cell: FieldLayout['cell'], value: number): void {
  if (cell === 'u8') view.setUint8(at, value);
  else if (cell === 'u16') view.setUint16(at, value, true);
  else view.setUint32(at, value, true);
}

function get(view: DataView, at: number, cell: FieldLayout['cell']): number {
  if (cell === 'u8') return view.getUint8(at);
  return cell === 'u16' ? view.getUint16(at, true) : view.getUint32(at, true);
}

function valuesOf(type: string, field: FieldLayout, value: FieldValue | undefined): readonly number[] {
  const where = `${type}.${field.name}`;
  if (value === undefined || (typeof value === 'number') !== (field.shape === 'one'))
    throw new RangeError(`${where} must be ${field.shape === 'one' ? 'a number' : 'a list of numbers'}`);
  const list = typeof value === 'number' ? [value] : Array.from(value);
  if (field.shape === 'fixed' && list.length !== field.count)
    throw new RangeError(`${where} takes ${field.count} values, not ${list.length}`);
  const bad = list.find((item) => !Number.isInteger(item) || item < 0 || item > cellMax[field.cell]);
  if (bad !== undefined) throw new RangeError(`${where}: ${bad} does not fit ${field.cell}`);
  return list;
}

/** The payload of a message. Throws RangeError when a value does not fit its field: that is an error of the caller. */
export function encodeMessage(message: Message): Uint8Array {
  const layout = layouts[message.type];
  if (layout === undefined) throw new RangeError(`There is no message "${String(message.type)}"`);
  const view = new DataView(new ArrayBuffer(wire.maxPayloadBytes));
  view.setUint8(0, layout.code);
  let at = 1;
  for (const field of layout.fields) {
    const given = (message as unknown as Readonly<Record<string, FieldValue | undefined>>)[field.name];
    for (const value of valuesOf(message.type, field, given)) {
      if (at + cellBytes[field.cell] > wire.maxPayloadBytes)
        throw new RangeError(`${message.type} is longer than ${wire.maxPayloadBytes} bytes`);
      put(view, at, field.cell, value);
      at += cellBytes[field.cell];
    }
  }
  return new Uint8Array(view.buffer, 0, at);
}

function listOf(view: DataView, at: number, field: FieldLayout, count: number): ArrayLike<number> {
  const values = Array.from({ length: count }, (_, index) =>
    get(view, at + index * cellBytes[field.cell], field.cell),
  );
  if (field.shape === 'fixed' && field.cell === 'u8') return values;
  return field.cell === 'u8'
    ? Uint8Array.from(values)
    : field.cell === 'u16'
      ? Uint16Array.from(values)
      : Uint32Array.from(values);
}

function fieldsOf(layout: MessageLayout, view: DataView): Record<string, FieldValue> {
  const fields: Record<string, FieldValue> = {};
  let at = 1;
  for (const field of layout.fields) {
    const bytes = cellBytes[field.cell];
    const count = field.shape === 'rest' ? (view.byteLength - at) / bytes : field.count;
    fields[field.name] = field.shape === 'one' ? get(view, at, field.cell) : listOf(view, at, field, count);
    at += count * bytes;
  }
  return fields;
}

function lengthFits({ fields, fixedBytes }: MessageLayout, body: number): boolean {
  const last = fields.at(-1);
  if (last?.shape !== 'rest') return body === fixedBytes;
  return body >= fixedBytes && (body - fixedBytes) % cellBytes[last.cell] === 0;
}

/** The message in a payload, or what is wrong with it. Never throws. */
export function parseMessage(payload: Uint8Array): Message | MessageFault {
  if (payload.length === 0) return { fault: 'empty' };
  const name = nameOfCode.get(payload[0]);
  if (name === undefined) return { fault: 'unknownMessage', code: payload[0], length: payload.length };
  const layout = layouts[name];
  if (!lengthFits(layout, payload.length - 1))
    return { fault: 'wrongLength', name, length: payload.length, expected: layout.fixedBytes + 1 };
  const view = new DataView(payload.buffer, payload.byteOffset, payload.length);
  return { type: name, ...fieldsOf(layout, view) } as unknown as Message;
}

/** Whether parseMessage found a fault. */
export const isMessageFault = (parsed: Message | MessageFault): parsed is MessageFault => 'fault' in parsed;
