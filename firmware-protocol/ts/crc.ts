// SPDX-License-Identifier: MIT
// CRC-16/IBM-3740 (polynomial 1021, start FFFF, nothing reflected, nothing inverted), by table.
// It does not know frames; frame.ts puts the CRC behind a payload, high byte first.

function tableEntry(index: number): number {
  let crc = index << 8;
  for (let bit = 0; bit < 8; bit += 1) crc = crc & 0x8000 ? (crc << 1) ^ 0x1021 : crc << 1;
  return crc & 0xffff;
}
const table = Uint16Array.from({ length: 256 }, (_, index) => tableEntry(index));

/** CRC-16/IBM-3740 of the bytes. */
export function crc16(bytes: Uint8Array): number {
  let crc = 0xffff;
  for (const byte of bytes) crc = ((crc << 8) & 0xffff) ^ table[(crc >> 8) ^ byte];
  return crc;
}
