// SPDX-License-Identifier: MIT
// Packs descriptor.json into logic/generated_descriptor.h: the JSON without blanks, its length and its CRC-16/IBM-3740.
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

function headerOf(json: string): string {
  const bytes = new TextEncoder().encode(json);
  const lines = json.match(/.{1,96}/gsu)?.map((piece) => `    ${JSON.stringify(piece)}`) ?? [];
  return `// SPDX-License-Identifier: MIT
// Written by firmware-protocol/firmware/embed-descriptor.ts from descriptor.json. Do not edit.
#pragma once
#include <stdint.h>

#include "flash.h"

constexpr uint16_t kDescriptorLength = ${bytes.length};
constexpr uint16_t kDescriptorCrc = 0x${crc16(bytes).toString(16).padStart(4, '0').toUpperCase()};
const char kDescriptor[] IN_FLASH =
${lines.join('\n')};
static_assert(sizeof kDescriptor == kDescriptorLength + 1, "the descriptor has the wrong length");
`;
}

const wanted = headerOf(JSON.stringify(JSON.parse(readFileSync(room('descriptor.json'), 'utf8'))));
const target = room('logic/generated_descriptor.h');
if (!process.argv.includes('--check')) writeFileSync(target, wanted);
else if (readFileSync(target, 'utf8') !== wanted) {
  process.stderr.write(
    'logic/generated_descriptor.h is out of step with descriptor.json.\nRun: npx tsx firmware-protocol/firmware/embed-descriptor.ts\n',
  );
  process.exitCode = 1;
}
