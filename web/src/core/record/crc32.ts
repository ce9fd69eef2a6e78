// SPDX-License-Identifier: MIT
// CRC-32 as zip, gzip and PNG use it (ISO-HDLC: polynomial EDB88320 reflected, all ones at both ends): a kept file
// that was changed by chance is noticed. Against intent it is no help.

const table = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = (rest >>> 1) ^ (rest & 1 ? 0xedb88320 : 0);
  return rest;
});
/** Unsigned, 0 for no bytes. */
export function crc32(bytes: Uint8Array): number {
  let rest = 0xffffffff;
  for (const byte of bytes) rest = (rest >>> 8) ^ table[(rest ^ byte) & 0xff];
  return ~rest >>> 0;
}
