// SPDX-License-Identifier: MIT
// Arithmetic and compare instructions after the AVR instruction set manual. `a` is the destination register,
// `b` the other register or the constant.
import type { Core, Operation } from './core.ts';
import * as registers from './registers.ts';
import * as status from './status-flags.ts';

// Copied once: where modules are transformed (tests, some loaders) an imported name costs a call at each use.
const { SREG } = registers;
const { addFlags, C, KEEP_TI, subtractFlags, wordFlags, Z } = status;

const KEEP_TIH = 0xe0;

function add(core: Core, a: number, r: number, carry: number): void {
  const { data } = core;
  const d = data[a];
  const result = (d + r + carry) & 0xff;
  data[a] = result;
  data[SREG] = (data[SREG] & KEEP_TI) | addFlags(d, r, result);
}
/** The result of a subtraction with its flags set; Z is only ever cleared when a borrow goes on. */
function subtract(core: Core, d: number, r: number, borrow: number, keepZero: boolean): number {
  const { data } = core;
  const before = data[SREG];
  const result = (d - r - borrow) & 0xff;
  const flags = subtractFlags(d, r, result);
  const kept = keepZero && (before & Z) === 0 ? flags & ~Z : flags;
  data[SREG] = (before & KEEP_TI) | kept;
  return result;
}

export const addRegister: Operation = (core, a, b) => add(core, a, core.data[b], 0);
export const addWithCarry: Operation = (core, a, b) => add(core, a, core.data[b], core.data[SREG] & C);
export const subtractRegister: Operation = (core, a, b) => {
  core.data[a] = subtract(core, core.data[a], core.data[b], 0, false);
};
export const subtractConstant: Operation = (core, a, b) => {
  core.data[a] = subtract(core, core.data[a], b, 0, false);
};
export const subtractWithBorrow: Operation = (core, a, b) => {
  core.data[a] = subtract(core, core.data[a], core.data[b], core.data[SREG] & C, true);
};
export const subtractConstantWithBorrow: Operation = (core, a, b) => {
  core.data[a] = subtract(core, core.data[a], b, core.data[SREG] & C, true);
};
export const compare: Operation = (core, a, b) => {
  subtract(core, core.data[a], core.data[b], 0, false);
};
export const compareConstant: Operation = (core, a, b) => {
  subtract(core, core.data[a], b, 0, false);
};
export const compareWithBorrow: Operation = (core, a, b) => {
  subtract(core, core.data[a], core.data[b], core.data[SREG] & C, true);
};
export const negate: Operation = (core, a) => {
  core.data[a] = subtract(core, 0, core.data[a], 0, false);
};

export const addWord: Operation = (core, a, b) => {
  const { data } = core;
  const d = data[a] | (data[a + 1] << 8);
  const result = (d + b) & 0xffff;
  storeWord(core, a, result);
  const flags = wordFlags(result, (~d & result & 0x8000) !== 0, (d & ~result & 0x8000) !== 0);
  data[SREG] = (data[SREG] & KEEP_TIH) | flags;
  core.cycles++;
};
export const subtractWord: Operation = (core, a, b) => {
  const { data } = core;
  const d = data[a] | (data[a + 1] << 8);
  const result = (d - b) & 0xffff;
  storeWord(core, a, result);
  const flags = wordFlags(result, (d & ~result & 0x8000) !== 0, (~d & result & 0x8000) !== 0);
  data[SREG] = (data[SREG] & KEEP_TIH) | flags;
  core.cycles++;
};

function storeWord(core: Core, a: number, value: number): void {
  core.data[a] = value;
  core.data[a + 1] = value >> 8;
}
/** Products go to r1:r0; C is bit 15 of the product before a fractional shift. */
function product(core: Core, raw: number, shift: 0 | 1): void {
  const { data } = core;
  const value = (raw << shift) & 0xffff;
  storeWord(core, 0, value);
  data[SREG] = (data[SREG] & ~(C | Z)) | ((raw >> 15) & 1) | (value === 0 ? Z : 0);
  core.cycles++;
}
const signed = (byte: number): number => (byte << 24) >> 24;

export const multiply: Operation = (core, a, b) => product(core, core.data[a] * core.data[b], 0);
export const multiplySigned: Operation = (core, a, b) =>
  product(core, signed(core.data[a]) * signed(core.data[b]), 0);
export const multiplyMixed: Operation = (core, a, b) => product(core, signed(core.data[a]) * core.data[b], 0);
export const multiplyFraction: Operation = (core, a, b) => product(core, core.data[a] * core.data[b], 1);
export const multiplyFractionSigned: Operation = (core, a, b) =>
  product(core, signed(core.data[a]) * signed(core.data[b]), 1);
export const multiplyFractionMixed: Operation = (core, a, b) =>
  product(core, signed(core.data[a]) * core.data[b], 1);
