// SPDX-License-Identifier: MIT
// Consistent overhead byte stuffing: takes the zeros out of bytes and puts them back. Any length.
// It adds no delimiter and knows no frames. Cheshire and Baker, IEEE/ACM Trans. Networking 7(2), 1999.

/** The bytes without zeros; one byte longer for each begun 254 bytes. */
export function encodeCobs(plain: Uint8Array): Uint8Array {
  const out = new Uint8Array(plain.length + Math.floor(plain.length / 254) + 1);
  let codeAt = 0;
  let write = 1;
  plain.forEach((byte, index) => {
    if (byte !== 0) out[write++] = byte;
    const full = write - codeAt === 255;
    if (byte !== 0 && !(full && index < plain.length - 1)) return;
    out[codeAt] = write - codeAt;
    codeAt = write++;
  });
  out[codeAt] = write - codeAt;
  return out.subarray(0, write);
}

/** The plain bytes, or null when the stuffed ones contradict themselves. */
export function decodeCobs(stuffed: Uint8Array): Uint8Array | null {
  if (stuffed.length === 0) return null;
  const out = new Uint8Array(stuffed.length);
  let write = 0;
  let read = 0;
  while (read < stuffed.length) {
    const code = stuffed[read];
    const end = read + code;
    if (code === 0 || end > stuffed.length) return null;
    for (read += 1; read < end; read += 1) {
      if (stuffed[read] === 0) return null;
      out[write++] = stuffed[read];
    }
    if (code !== 255 && read < stuffed.length) out[write++] = 0;
  }
  return out.subarray(0, write);
}
