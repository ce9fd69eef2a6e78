// SPDX-License-Identifier: MIT
// The flags of SREG that arithmetic leaves (AVR instruction set manual): C, Z, N, V, S = N xor V, H.
// Pure functions of operands and result.

export const C = 0x01;
export const Z = 0x02;
export const KEEP_TI = 0xc0;
/** T, I, H and C stay in logic operations. */
export const KEEP_TIHC = 0xe1;

/** Z, N and S of a byte with V = 0. */
export const logicFlags = Uint8Array.from(
  { length: 256 },
  (_, r) => (r === 0 ? Z : 0) | (r & 0x80 ? 0x14 : 0),
);

/** N from bit 7, V as given, S and Z; carries from a word whose bit 7 is C and bit 3 is H. */
function compose(result: number, overflow: number, carries: number): number {
  const v = (overflow & 0x80) >> 4;
  const flags = logicFlags[result] ^ (v | (v << 1));
  return flags | ((carries & 0x80) >> 7) | ((carries & 0x08) << 2);
}

export function addFlags(d: number, r: number, result: number): number {
  return compose(result, (d ^ result) & (r ^ result), (d & r) | (r & ~result) | (~result & d));
}

export function subtractFlags(d: number, r: number, result: number): number {
  return compose(result, (d ^ r) & (d ^ result), (~d & r) | (r & result) | (result & ~d));
}

/** Flags of a shift right: C is the bit that fell out, V = N xor C. */
export function shiftFlags(result: number, out: number): number {
  const n = result >> 7;
  const v = n ^ out;
  return out | (result === 0 ? Z : 0) | (n << 2) | (v << 3) | ((n ^ v) << 4);
}

/** Flags of a 16-bit word operation but its overflow and carry. */
export function wordFlags(result: number, overflow: boolean, carry: boolean): number {
  const n = result >> 15;
  const v = overflow ? 1 : 0;
  return (carry ? C : 0) | (result === 0 ? Z : 0) | (n << 2) | (v << 3) | ((n ^ v) << 4);
}
