// SPDX-License-Identifier: MIT
// Packs descriptor.json into logic/generated_descriptor.h: the JSON without blanks, its length and its CRC-16/IBM-3740;
// beside it the board with wider dividers, from what descriptor-4s.json says otherwise.
// Run: npx tsx firmware-protocol/firmware/embed-descriptor.ts   (with --check it writes nothing and fails on a difference)
import { readFileSync, writeFileSync } from 'node:fs';

const room = (path: string): URL => new URL(path, import.meta.url);

function crc16(bytes: Uint8Array): number {
  let crc = 0xffff;
  for (const byte of bytes) {
    crc ^= byte << 8;
    for (let bit = 0; bit < 8; bit += 1)
      crc = crc & 0x8000 ? ((crc << 1) ^ 0x1021) & 0xffff : (crc << 1) & 0xffff;
  }
  return crc;
}

interface Descriptor {
  readonly taps: readonly { readonly id: string }[];
}
/** A board whose dividers differ: what its file says of a tap stands in place of the plain board's. */
function variantOf(plain: Descriptor, { taps, ...rest }: { taps: Readonly<Record<string, object>> }): object {
  return { ...plain, ...rest, taps: plain.taps.map((tap) => ({ ...tap, ...taps[tap.id] })) };
}
function declarationOf(descriptor: object): string {
  const json = JSON.stringify(descriptor);
  const bytes = new TextEncoder().encode(json);
  const lines = json.match(/.{1,96}/gsu)?.map((piece) => `    ${JSON.stringify(piece)}`) ?? [];
  return `constexpr uint16_t kDescriptorLength = ${bytes.length};
constexpr uint16_t kDescriptorCrc = 0x${crc16(bytes).toString(16).padStart(4, '0').toUpperCase()};
const char kDescriptor[] IN_FLASH =
${lines.join('\n')};
`;
}
function headerOf(plain: Descriptor, wide: object): string {
  return `// SPDX-License-Identifier: MIT
// Written by firmware-protocol/firmware/embed-descriptor.ts from descriptor.json and descriptor-4s.json. Do not edit.
#pragma once
#include <stdint.h>

#include "flash.h"

#ifdef VARIANT_4S
${declarationOf(wide)}#else
${declarationOf(plain)}#endif
static_assert(sizeof kDescriptor == kDescriptorLength + 1, "the descriptor has the wrong length");
`;
}
const read = (path: string) => JSON.parse(readFileSync(room(path), 'utf8'));
const plain: Descriptor = read('descriptor.json');
const wanted = headerOf(plain, variantOf(plain, read('descriptor-4s.json')));
const target = room('logic/generated_descriptor.h');
if (!process.argv.includes('--check')) writeFileSync(target, wanted);
else if (readFileSync(target, 'utf8') !== wanted) {
  process.stderr.write(
    'logic/generated_descriptor.h is out of step with descriptor.json.\nRun: npx tsx firmware-protocol/firmware/embed-descriptor.ts\n',
  );
  process.exitCode = 1;
}
