// SPDX-License-Identifier: MIT
// Reads the three tables that define the wire (messages, codes, constants) into plain values.
// It refuses tables that contradict themselves. It does not know what is written from them.

export type Cell = 'u8' | 'u16' | 'u32';
export type Shape = 'one' | 'fixed' | 'rest';
export interface FieldRow {
  readonly name: string;
  readonly cell: Cell;
  readonly shape: Shape;
  /** Values in the field: 1, n, or 0 for a field that runs to the end of the payload. */
  readonly count: number;
  readonly unit: string;
  readonly meaning: string;
}
export interface MessageRow {
  readonly code: number;
  readonly name: string;
  readonly fields: readonly FieldRow[];
}
export interface CodeRow {
  readonly group: string;
  readonly code: number;
  readonly name: string;
  readonly words: string;
}
export interface ConstantRow {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly meaning: string;
}
export interface WireDefinition {
  readonly messages: readonly MessageRow[];
  readonly codes: ReadonlyMap<string, readonly CodeRow[]>;
  readonly constants: readonly ConstantRow[];
}

export const cellBytes: Readonly<Record<Cell, number>> = { u8: 1, u16: 2, u32: 4 };
export const fixedBytes = (message: MessageRow): number =>
  message.fields.reduce((sum, field) => sum + field.count * cellBytes[field.cell], 0);
export const restField = (message: MessageRow): FieldRow | undefined =>
  message.fields.find((field) => field.shape === 'rest');

function rows(text: string, table: string, least: number): string[][] {
  const lines = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  return lines.slice(1).map((line) => {
    const cells = line.split('\t');
    if (cells.length < least) throw new Error(`${table}: row "${line}" has fewer than ${least} columns`);
    return cells;
  });
}

function wholeNumber(text: string, where: string): number {
  const value = Number(text);
  if (text === '' || !Number.isInteger(value) || value < 0)
    throw new Error(`${where}: "${text}" is not a whole number`);
  return value;
}

function fieldOf([, message, name, type, unit = '', meaning = '']: string[]): FieldRow {
  const match = /^(u8|u16|u32)(\[(\d*)\])?$/.exec(type);
  if (match === null) throw new Error(`messages: ${message}.${name} has the unknown type "${type}"`);
  const [, cell, array, length] = match;
  const shape: Shape = array === undefined ? 'one' : length === '' ? 'rest' : 'fixed';
  const count = shape === 'one' ? 1 : shape === 'rest' ? 0 : Number(length);
  return { name, cell: cell as Cell, shape, count, unit, meaning };
}

function refuseRepeats(names: readonly (string | number)[], where: string): void {
  const repeated = names.find((name, index) => names.indexOf(name) !== index);
  if (repeated !== undefined) throw new Error(`${where}: ${repeated} occurs twice`);
}

function checkMessage(message: MessageRow): void {
  refuseRepeats(
    message.fields.map((field) => field.name),
    `messages: ${message.name}`,
  );
  const early = message.fields.slice(0, -1).find((field) => field.shape === 'rest');
  if (early !== undefined)
    throw new Error(`messages: ${message.name}.${early.name} runs to the end but is not last`);
}

function readMessages(text: string): MessageRow[] {
  const messages: { code: number; name: string; fields: FieldRow[] }[] = [];
  for (const row of rows(text, 'messages', 4)) {
    if (row[0] !== '-') messages.push({ code: wholeNumber(row[0], 'messages'), name: row[1], fields: [] });
    const open = messages.at(-1);
    if (open === undefined || (row[0] === '-' && row[1] !== open.name))
      throw new Error(`messages: "${row[1]}.${row[2]}" continues no message`);
    open.fields.push(fieldOf(row));
  }
  messages.forEach(checkMessage);
  refuseRepeats(
    messages.map((message) => message.code),
    'messages',
  );
  refuseRepeats(
    messages.map((message) => message.name),
    'messages',
  );
  return messages;
}

function readCodes(text: string): Map<string, CodeRow[]> {
  const groups = new Map<string, CodeRow[]>();
  for (const [group, code, name, words] of rows(text, 'codes', 4)) {
    const known = groups.get(group) ?? [];
    known.push({ group, code: wholeNumber(code, `codes: ${group}`), name, words });
    groups.set(group, known);
  }
  for (const [group, list] of groups) {
    refuseRepeats(
      list.map((row) => row.code),
      `codes: ${group}`,
    );
    refuseRepeats(
      list.map((row) => row.name),
      `codes: ${group}`,
    );
  }
  return groups;
}

function readConstants(text: string): ConstantRow[] {
  const list = rows(text, 'constants', 2).map(([name, value, unit = '', meaning = '']) => {
    return { name, value: wholeNumber(value, `constants: ${name}`), unit, meaning };
  });
  refuseRepeats(
    list.map((row) => row.name),
    'constants',
  );
  return list;
}

/** Reads the tables; throws with the table and row when they contradict themselves. */
export function readWireDefinition(messages: string, codes: string, constants: string): WireDefinition {
  return { messages: readMessages(messages), codes: readCodes(codes), constants: readConstants(constants) };
}
