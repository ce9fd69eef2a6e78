// SPDX-License-Identifier: MIT
// Writes the reference part of PROTOCOL.md (messages byte by byte, codes, constants, worked examples) between its
// markers. The prose around the markers is written by people and left alone.
import { cellBytes, fixedBytes, restField } from './wire-definition.ts';
import type { FieldRow, MessageRow, WireDefinition } from './wire-definition.ts';

const hex = (code: number): string => `0x${code.toString(16).toUpperCase().padStart(2, '0')}`;
const spaced = (text: string): string => (text.match(/../g) ?? []).join(' ').toUpperCase();
const table = (head: readonly string[], rows: readonly (readonly string[])[]): string[] =>
  [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`);

function typeOf(field: FieldRow): string {
  if (field.shape === 'one') return field.cell;
  return field.shape === 'rest' ? `${field.cell}[]` : `${field.cell}[${field.count}]`;
}

function fieldRows(message: MessageRow): string[][] {
  let at = 1;
  return message.fields.map((field) => {
    const bytes = field.count * cellBytes[field.cell];
    const place = field.shape === 'rest' ? `${at}…` : bytes === 1 ? `${at}` : `${at}–${at + bytes - 1}`;
    at += bytes;
    return [place, field.name, typeOf(field), field.unit, field.meaning];
  });
}

function messagePart(message: MessageRow): string[] {
  const rest = restField(message);
  const length = fixedBytes(message) + 1;
  const told = rest === undefined ? `${length} bytes` : `${length} bytes and ${rest.name}`;
  const head = ['byte', 'field', 'type', 'unit', 'meaning'];
  return [`#### ${hex(message.code)} ${message.name} (${told})`, '', ...table(head, fieldRows(message)), ''];
}

/** Every message, byte by byte. Byte 0 is the code. */
export function messagesPart({ messages }: WireDefinition): string {
  const commands = messages.filter((message) => message.code < 0x80);
  const reports = messages.filter((message) => message.code >= 0x80);
  const lines = ['### To the rig', '', ...commands.flatMap(messagePart)];
  return [...lines, '### From the rig', '', ...reports.flatMap(messagePart)].join('\n');
}

/** Every group of codes with its words. */
export function codesPart({ codes }: WireDefinition): string {
  const groups = [...codes].flatMap(([group, rows]) => [
    `#### ${group}`,
    '',
    ...table(
      ['code', 'name', 'words'],
      rows.map((row) => [`${row.code}`, row.name, row.words]),
    ),
    '',
  ]);
  return groups.join('\n');
}

/** The figures both sides agree on. */
export function constantsPart({ constants }: WireDefinition): string {
  const rows = constants.map((row) => [row.name, `${row.value}`, row.unit, row.meaning]);
  return [...table(['name', 'value', 'unit', 'meaning'], rows), ''].join('\n');
}

/** The golden messages short enough to read, as worked examples. */
export function examplesPart(vectors: string): string {
  const rows = vectors.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  const short = rows.map((row) => row.split('\t')).filter(([, , payload]) => payload.length <= 50);
  const cells = short.map(([, told, payload, frame]) => [
    `\`${told}\``,
    `\`${spaced(payload)}\``,
    `\`${spaced(frame)}\``,
  ]);
  return [...table(['message', 'payload', 'frame'], cells), ''].join('\n');
}

/** The document with what lies between the markers of `part` replaced. */
export function withPart(document: string, part: string, content: string): string {
  const [open, close] = [`<!-- ${part}: written by generate.ts -->`, `<!-- end of ${part} -->`];
  const [from, to] = [document.indexOf(open), document.indexOf(close)];
  if (from < 0 || to < from) throw new Error(`PROTOCOL.md: the markers "${open}" and "${close}" are missing`);
  return `${document.slice(0, from)}${open}\n\n${content}\n${document.slice(to)}`;
}
