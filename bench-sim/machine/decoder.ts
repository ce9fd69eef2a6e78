// SPDX-License-Identifier: MIT
// Turns flash words into operations with their operands once, before the program runs. Patterns are those of
// the AVR instruction set manual; the first that fits counts.
import type { Operation } from './core.ts';
import * as arithmetic from './operations-arithmetic.ts';
import * as flow from './operations-flow.ts';
import * as logic from './operations-logic.ts';
import * as memory from './operations-memory.ts';

export interface Decoded {
  readonly operations: Operation[];
  readonly a: Uint16Array;
  readonly b: Uint16Array;
}
/** Operands of a word at an address. */
type Operands = (word: number, at: number) => readonly [number, number];
type Pattern = readonly [mask: number, value: number, operation: Operation, operands: Operands];

const PC_MASK = 0x3fff;
const d5 = (w: number): number => (w >> 4) & 31;
const r5 = (w: number): number => (w & 15) | ((w >> 5) & 16);
const d4 = (w: number): number => 16 + ((w >> 4) & 15);
const k8 = (w: number): number => (w & 15) | ((w >> 4) & 0xf0);
const q6 = (w: number): number => (w & 7) | ((w >> 7) & 0x18) | ((w >> 8) & 0x20);
const none: Operands = () => [0, 0];
const one: Operands = (w) => [d5(w), 0];
const two: Operands = (w) => [d5(w), r5(w)];
const constant: Operands = (w) => [d4(w), k8(w)];
const word: Operands = (w) => [24 + ((w >> 3) & 6), (w & 15) | ((w >> 2) & 0x30)];
const displaced: Operands = (w) => [d5(w), q6(w)];
const bitOf: Operands = (w) => [d5(w), 1 << (w & 7)];
const ioBit: Operands = (w) => [32 + ((w >> 3) & 31), 1 << (w & 7)];
const io: Operands = (w) => [d5(w), 32 + ((w & 15) | ((w >> 5) & 0x30))];
const flag: Operands = (w) => [1 << ((w >> 4) & 7), 0];
const near: Operands = (w, at) => [(at + 1 + ((w << 20) >> 20)) & PC_MASK, 0];
const branch: Operands = (w, at) => [(at + 1 + ((w << 22) >> 25)) & PC_MASK, 1 << (w & 7)];
const high16: Operands = (w) => [16 + ((w >> 4) & 15), 16 + (w & 15)];
const high8: Operands = (w) => [16 + ((w >> 4) & 7), 16 + (w & 7)];
const pair: Operands = (w) => [2 * ((w >> 4) & 15), 2 * (w & 15)];

const registers: readonly Pattern[] = [
  [0xffff, 0x0000, flow.nothing, none],
  [0xff00, 0x0100, memory.moveWord, pair],
  [0xff00, 0x0200, arithmetic.multiplySigned, high16],
  [0xff88, 0x0300, arithmetic.multiplyMixed, high8],
  [0xff88, 0x0308, arithmetic.multiplyFraction, high8],
  [0xff88, 0x0380, arithmetic.multiplyFractionSigned, high8],
  [0xff88, 0x0388, arithmetic.multiplyFractionMixed, high8],
  [0xfc00, 0x0400, arithmetic.compareWithBorrow, two],
  [0xfc00, 0x0800, arithmetic.subtractWithBorrow, two],
  [0xfc00, 0x0c00, arithmetic.addRegister, two],
  [0xfc00, 0x1000, flow.skipIfEqual, two],
  [0xfc00, 0x1400, arithmetic.compare, two],
  [0xfc00, 0x1800, arithmetic.subtractRegister, two],
  [0xfc00, 0x1c00, arithmetic.addWithCarry, two],
  [0xfc00, 0x2000, logic.and, two],
  [0xfc00, 0x2400, logic.exclusiveOr, two],
  [0xfc00, 0x2800, logic.or, two],
  [0xfc00, 0x2c00, memory.move, two],
  [0xf000, 0x3000, arithmetic.compareConstant, constant],
  [0xf000, 0x4000, arithmetic.subtractConstantWithBorrow, constant],
  [0xf000, 0x5000, arithmetic.subtractConstant, constant],
  [0xf000, 0x6000, logic.orConstant, constant],
  [0xf000, 0x7000, logic.andConstant, constant],
  [0xf000, 0xe000, memory.loadConstant, constant],
  [0xfe0f, 0x9400, logic.complement, one],
  [0xfe0f, 0x9401, arithmetic.negate, one],
  [0xfe0f, 0x9402, logic.swapHalves, one],
  [0xfe0f, 0x9403, logic.increment, one],
  [0xfe0f, 0x9405, logic.shiftArithmetic, one],
  [0xfe0f, 0x9406, logic.shiftRight, one],
  [0xfe0f, 0x9407, logic.rotateRight, one],
  [0xfe0f, 0x940a, logic.decrement, one],
  [0xff00, 0x9600, arithmetic.addWord, word],
  [0xff00, 0x9700, arithmetic.subtractWord, word],
  [0xfc00, 0x9c00, arithmetic.multiply, two],
  [0xfe08, 0xf800, logic.loadBit, bitOf],
  [0xfe08, 0xfa00, logic.storeBit, bitOf],
];
const transfers: readonly Pattern[] = [
  [0xd208, 0x8000, memory.loadFrom(memory.ZP), displaced],
  [0xd208, 0x8008, memory.loadFrom(memory.Y), displaced],
  [0xd208, 0x8200, memory.storeTo(memory.ZP), displaced],
  [0xd208, 0x8208, memory.storeTo(memory.Y), displaced],
  [0xfe0f, 0x9000, memory.loadDirect, one],
  [0xfe0f, 0x9001, memory.loadThenUp(memory.ZP), one],
  [0xfe0f, 0x9002, memory.downThenLoad(memory.ZP), one],
  [0xfe0f, 0x9004, memory.loadProgram, one],
  [0xfe0f, 0x9005, memory.loadProgramThenUp, one],
  [0xfe0f, 0x9009, memory.loadThenUp(memory.Y), one],
  [0xfe0f, 0x900a, memory.downThenLoad(memory.Y), one],
  [0xfe0f, 0x900c, memory.loadFrom(memory.X), one],
  [0xfe0f, 0x900d, memory.loadThenUp(memory.X), one],
  [0xfe0f, 0x900e, memory.downThenLoad(memory.X), one],
  [0xfe0f, 0x900f, memory.pop, one],
  [0xfe0f, 0x9200, memory.storeDirect, one],
  [0xfe0f, 0x9201, memory.storeThenUp(memory.ZP), one],
  [0xfe0f, 0x9202, memory.downThenStore(memory.ZP), one],
  [0xfe0f, 0x9209, memory.storeThenUp(memory.Y), one],
  [0xfe0f, 0x920a, memory.downThenStore(memory.Y), one],
  [0xfe0f, 0x920c, memory.storeTo(memory.X), one],
  [0xfe0f, 0x920d, memory.storeThenUp(memory.X), one],
  [0xfe0f, 0x920e, memory.downThenStore(memory.X), one],
  [0xfe0f, 0x920f, memory.push, one],
  [0xffff, 0x95c8, memory.loadProgram, none],
  [0xffff, 0x95e8, memory.storeProgram, none],
  [0xf800, 0xb000, memory.input, io],
  [0xf800, 0xb800, memory.output, io],
  [0xff00, 0x9800, logic.clearIoBit, ioBit],
  [0xff00, 0x9a00, logic.setIoBit, ioBit],
];
const control: readonly Pattern[] = [
  [0xff8f, 0x9408, logic.setFlag, flag],
  [0xff8f, 0x9488, logic.clearFlag, flag],
  [0xffff, 0x9409, flow.jumpIndirect, none],
  [0xffff, 0x9508, flow.returnFromCall, none],
  [0xffff, 0x9509, flow.callIndirect, none],
  [0xffff, 0x9518, flow.returnFromInterrupt, none],
  [0xffff, 0x9588, flow.sleep, none],
  [0xffff, 0x9598, flow.nothing, none],
  [0xffff, 0x95a8, flow.watchdogReset, none],
  [0xfe0e, 0x940c, flow.jump, none],
  [0xfe0e, 0x940e, flow.call, none],
  [0xff00, 0x9900, flow.skipIfIoClear, ioBit],
  [0xff00, 0x9b00, flow.skipIfIoSet, ioBit],
  [0xf000, 0xc000, flow.jumpNear, near],
  [0xf000, 0xd000, flow.callNear, near],
  [0xfc00, 0xf000, flow.branchIfSet, branch],
  [0xfc00, 0xf400, flow.branchIfClear, branch],
  [0xfe08, 0xfc00, flow.skipIfBitClear, bitOf],
  [0xfe08, 0xfe00, flow.skipIfBitSet, bitOf],
];
const patterns: readonly Pattern[] = [...registers, ...transfers, ...control];
const anything: Pattern = [0, 0, flow.unknown, none];

export function decode(program: Uint16Array): Decoded {
  const operations: Operation[] = [];
  const a = new Uint16Array(program.length);
  const b = new Uint16Array(program.length);
  program.forEach((opcode, at) => {
    const [, , operation, operands] = patterns.find(([mask, value]) => (opcode & mask) === value) ?? anything;
    operations.push(operation);
    [a[at], b[at]] = operands(opcode, at);
  });
  return { operations, a, b };
}
