// SPDX-License-Identifier: MIT
// Logic, shift and bit instructions after the AVR instruction set manual. `a` is the destination register or
// the I/O address, `b` the other register, constant, bit mask or bit number.
import type { Core, Operation } from './core.ts';
import * as registers from './registers.ts';
import * as status from './status-flags.ts';

// Copied once: where modules are transformed (tests, some loaders) an imported name costs a call at each use.
const { SREG } = registers;
const { C, KEEP_TIHC, logicFlags, shiftFlags } = status;

const KEEP_TIH = 0xe0;
const T = 0x40;

function logic(core: Core, a: number, result: number): void {
  const { data } = core;
  data[a] = result;
  data[SREG] = (data[SREG] & KEEP_TIHC) | logicFlags[result];
}
export const and: Operation = (core, a, b) => logic(core, a, core.data[a] & core.data[b]);
export const andConstant: Operation = (core, a, b) => logic(core, a, core.data[a] & b);
export const or: Operation = (core, a, b) => logic(core, a, core.data[a] | core.data[b]);
export const orConstant: Operation = (core, a, b) => logic(core, a, core.data[a] | b);
export const exclusiveOr: Operation = (core, a, b) => logic(core, a, core.data[a] ^ core.data[b]);
export const complement: Operation = (core, a) => {
  logic(core, a, core.data[a] ^ 0xff);
  core.data[SREG] |= C;
};

/** One up or down: V only where the sign flips by itself, C untouched. */
function count(core: Core, a: number, result: number, overflowAt: number): void {
  const { data } = core;
  data[a] = result;
  const v = result === overflowAt ? 0x18 : 0;
  data[SREG] = (data[SREG] & KEEP_TIHC) | (logicFlags[result] ^ v);
}
export const increment: Operation = (core, a) => count(core, a, (core.data[a] + 1) & 0xff, 0x80);
export const decrement: Operation = (core, a) => count(core, a, (core.data[a] - 1) & 0xff, 0x7f);

function shift(core: Core, a: number, top: number): void {
  const { data } = core;
  const d = data[a];
  const result = (d >> 1) | top;
  data[a] = result;
  data[SREG] = (data[SREG] & KEEP_TIH) | shiftFlags(result, d & 1);
}
export const shiftRight: Operation = (core, a) => shift(core, a, 0);
export const rotateRight: Operation = (core, a) => shift(core, a, (core.data[SREG] & C) << 7);
export const shiftArithmetic: Operation = (core, a) => shift(core, a, core.data[a] & 0x80);
export const swapHalves: Operation = (core, a) => {
  const d = core.data[a];
  core.data[a] = (d << 4) | (d >> 4);
};

export const setFlag: Operation = (core, a) => {
  core.data[SREG] |= a;
};
export const clearFlag: Operation = (core, a) => {
  core.data[SREG] &= ~a;
};
export const storeBit: Operation = (core, a, b) => {
  core.data[SREG] = core.data[a] & b ? core.data[SREG] | T : core.data[SREG] & ~T;
};
export const loadBit: Operation = (core, a, b) => {
  core.data[a] = core.data[SREG] & T ? core.data[a] | b : core.data[a] & ~b;
};
/** Only the one bit is written, so that no other flag of a flag register is cleared. */
export const setIoBit: Operation = (core, a, b) => {
  core.write(a, core.read(a) | b, b);
  core.cycles++;
};
export const clearIoBit: Operation = (core, a, b) => {
  core.write(a, core.read(a) & ~b, b);
  core.cycles++;
};
