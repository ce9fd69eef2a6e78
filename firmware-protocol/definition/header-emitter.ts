// SPDX-License-Identifier: MIT
// Writes the wire definition as a C++11 header for the firmware and its host build.
// It does not know the firmware; it only names codes, constants and packed layouts.
import { cellBytes, fixedBytes, restField } from './wire-definition.ts';
import type { ConstantRow, FieldRow, MessageRow, WireDefinition } from './wire-definition.ts';

const capital = (name: string): string => name[0].toUpperCase() + name.slice(1);
const hex = (code: number): string => `0x${code.toString(16).toUpperCase().padStart(2, '0')}`;
const cTypes = { u8: 'uint8_t', u16: 'uint16_t', u32: 'uint32_t' } as const;

function member(field: FieldRow): string {
  const array = field.shape === 'fixed' ? `[${field.count}]` : '';
  const told = field.meaning === '' ? '' : `  // ${field.meaning}`;
  return `  ${cTypes[field.cell]} ${field.name}${array};${told}`;
}

function structOf(message: MessageRow): string[] {
  const rest = restField(message);
  const tail =
    rest === undefined ? [] : [`  // then ${cTypes[rest.cell]} ${rest.name}[] to the end of the payload`];
  const name = `Msg${capital(message.name)}`;
  return [
    `struct ${name} {`,
    ...message.fields.filter((field) => field.shape !== 'rest').map(member),
    ...tail,
    '} __attribute__((packed));',
    `static_assert(sizeof(${name}) == ${fixedBytes(message)}, "${name} has the wrong size");`,
    '',
  ];
}

function constantOf(row: ConstantRow): string {
  const type = row.value < 256 ? 'uint8_t' : row.value < 65536 ? 'uint16_t' : 'uint32_t';
  const told = [row.meaning, row.unit === '' ? '' : `[${row.unit}]`].filter((part) => part !== '').join(' ');
  return `constexpr ${type} k${capital(row.name)} = ${row.value}${row.value < 65536 ? '' : 'UL'};  // ${told}`;
}

function lengthCase(message: MessageRow): string {
  const size = `sizeof(Msg${capital(message.name)})`;
  const rest = restField(message);
  const each = rest === undefined ? 1 : cellBytes[rest.cell];
  const whole = each === 1 ? '' : ` && (bytes - ${size}) % ${each} == 0`;
  const test = rest === undefined ? `bytes == ${size}` : `bytes >= ${size}${whole}`;
  return `    case kMsg${capital(message.name)}: return ${test};`;
}

function codesOf(groups: WireDefinition['codes']): string[] {
  return [...groups].flatMap(([group, rows]) => [
    ...rows.map(
      (row) => `constexpr uint8_t k${capital(group)}${capital(row.name)} = ${row.code};  // ${row.words}`,
    ),
    '',
  ]);
}

/** The text of firmware/logic/generated_messages.h. */
export function headerOf({ messages, codes, constants }: WireDefinition): string {
  const commands = messages.filter((message) => message.code < 0x80);
  const lines = [
    '// SPDX-License-Identifier: MIT',
    '// Written by firmware-protocol/generate.ts from messages.tsv, codes.tsv and constants.tsv. Do not edit.',
    '// A payload is one code byte, then the packed struct of that message, then its rest field if it has one.',
    '#pragma once',
    '#include <stdint.h>',
    '',
    ...constants.map(constantOf),
    '',
    ...messages.map((message) => `constexpr uint8_t kMsg${capital(message.name)} = ${hex(message.code)};`),
    '',
    ...codesOf(codes),
    ...messages.flatMap(structOf),
    '/** Whether `bytes` after the code byte fit that command. Unknown codes fit nothing. */',
    'inline bool commandLengthFits(uint8_t code, uint8_t bytes) {',
    '  switch (code) {',
    ...commands.map(lengthCase),
    '    default: return false;',
    '  }',
    '}',
  ];
  return lines.join('\n') + '\n';
}
