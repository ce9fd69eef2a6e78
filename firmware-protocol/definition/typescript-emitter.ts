// SPDX-License-Identifier: MIT
// Writes the wire definition as TypeScript: layouts, one type a message, codes with words, constants.
// It does not know how a payload is read or written; ts/messages.ts does that from the layouts.
import { fixedBytes } from './wire-definition.ts';
import type { CodeRow, FieldRow, MessageRow, WireDefinition } from './wire-definition.ts';

const capital = (name: string): string => name[0].toUpperCase() + name.slice(1);
const quoted = (text: string): string => `'${text.replaceAll('\\', '\\\\').replaceAll("'", "\\'")}'`;
const hex = (code: number): string => `0x${code.toString(16).padStart(2, '0')}`;

function fieldType(field: FieldRow): string {
  if (field.shape === 'one') return 'number';
  if (field.shape === 'fixed' && field.cell === 'u8') return 'readonly number[]';
  return { u8: 'Uint8Array', u16: 'Uint16Array', u32: 'Uint32Array' }[field.cell];
}

function comment({ meaning, unit }: { meaning: string; unit: string }): string[] {
  const told = [meaning, unit === '' ? '' : `[${unit}]`].filter((part) => part !== '').join(' ');
  return told === '' ? [] : [`  /** ${told} */`];
}

function fieldLines(field: FieldRow): string[] {
  return [...comment(field), `  readonly ${field.name}: ${fieldType(field)};`];
}

function messageType(message: MessageRow): string[] {
  const fields = message.fields.flatMap(fieldLines);
  const name = `${capital(message.name)}Message`;
  return [`export interface ${name} {`, `  readonly type: ${quoted(message.name)};`, ...fields, '}'];
}

function layout(message: MessageRow): string[] {
  const fields = message.fields.map(
    ({ name, cell, shape, count }) =>
      `      { name: ${quoted(name)}, cell: ${quoted(cell)}, shape: ${quoted(shape)}, count: ${count} },`,
  );
  const head = `  ${message.name}: { code: ${hex(message.code)}, fixedBytes: ${fixedBytes(message)}, fields: [`;
  return [head, ...fields, '    ] },'];
}

function union(name: string, messages: readonly MessageRow[]): string[] {
  return [`export type ${name} =`, ...messages.map((message) => `  | ${capital(message.name)}Message`), ';'];
}

function codeGroup(group: string, codes: readonly CodeRow[]): string[] {
  const members = codes.map((row) => `  /** ${row.words} */\n  ${row.name}: ${row.code},`);
  return [`export const ${group}Code = {`, ...members, '} as const;'];
}

function wordTable(groups: WireDefinition['codes']): string[] {
  const lines = [...groups].flatMap(([group, codes]) => [
    `  ${group}: [`,
    ...codes.map(
      (row) => `    { code: ${row.code}, name: ${quoted(row.name)}, words: ${quoted(row.words)} },`,
    ),
    '  ],',
  ]);
  return [
    'export const codeTable = {',
    ...lines,
    '} as const satisfies Record<string, readonly CodeEntry[]>;',
  ];
}

const shapes = [
  "export interface FieldLayout { readonly name: string; readonly cell: 'u8' | 'u16' | 'u32'; readonly shape: 'one' | 'fixed' | 'rest'; readonly count: number }",
  'export interface MessageLayout { readonly code: number; readonly fixedBytes: number; readonly fields: readonly FieldLayout[] }',
  'export interface CodeEntry { readonly code: number; readonly name: string; readonly words: string }',
];

/** The text of ts/generated-messages.ts. */
export function typescriptOf(definition: WireDefinition): string {
  const { messages, codes, constants } = definition;
  const lines = [
    '// SPDX-License-Identifier: MIT',
    '// Written by firmware-protocol/generate.ts from messages.tsv, codes.tsv and constants.tsv. Do not edit.',
    '// Layouts, types, codes and constants of the wire; it reads and writes nothing itself.',
    ...shapes,
    'export const wire = {',
    ...constants.flatMap((row) => [...comment(row), `  ${row.name}: ${row.value},`]),
    '} as const;',
    ...messages.flatMap(messageType),
    ...union(
      'CommandMessage',
      messages.filter((message) => message.code < 0x80),
    ),
    ...union(
      'ReportMessage',
      messages.filter((message) => message.code >= 0x80),
    ),
    'export type Message = CommandMessage | ReportMessage;',
    "export type MessageName = Message['type'];",
    'export const messageLayouts = {',
    ...messages.flatMap(layout),
    '} as const satisfies Record<MessageName, MessageLayout>;',
    ...[...codes].flatMap(([group, list]) => codeGroup(group, list)),
    ...wordTable(codes),
    'export type CodeGroup = keyof typeof codeTable;',
  ];
  return lines.join('\n') + '\n';
}
