// SPDX-License-Identifier: MIT
// The instruction core in lock-step with avr8js (an independent AVR core): random instructions on random state.
// Known differences of avr8js are listed and checked against the instruction set manual instead.
import { avrInstruction, CPU } from 'avr8js';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../seeded-random.ts';
import { Core } from './core.ts';
import { decode } from './decoder.ts';
import { unknown, sleep } from './operations-flow.ts';
import { storeProgram } from './operations-memory.ts';
import { SREG } from './registers.ts';

const random = seededRandom(1, 'core test');
const byte = (): number => random.uint32() & 0xff;

/** Registers, RAM and SREG by chance; pointers into the RAM, the stack in its upper half. */
function chance(data: Uint8Array): void {
  for (let i = 0; i < data.length; i++) data[i] = i < 32 || i >= 0x100 ? byte() : 0;
  for (const high of [27, 29, 31]) data[high] = 2 + (byte() % 5);
  data[SREG] = byte();
  data[0x5d] = byte();
  data[0x5e] = 7;
}

interface Outcome {
  readonly pc: number;
  readonly cycles: number;
  readonly data: Uint8Array;
}
function runBoth(program: Uint16Array<ArrayBuffer>, data: Uint8Array, at: number): [Outcome, Outcome] {
  const reference = new CPU(program, 2048);
  reference.data.set(data);
  reference.pc = at;
  avrInstruction(reference);
  const core = new Core(program);
  core.data.set(data);
  core.pc = at + 1;
  const { operations, a, b } = decode(program.subarray(at, at + 1));
  operations[0](core, a[0], b[0]);
  core.cycles++;
  return [
    { pc: reference.pc, cycles: reference.cycles, data: reference.data },
    { pc: core.pc, cycles: core.cycles, data: core.data },
  ];
}
const H = 0x20;
const Z = 0x02;
/** Where avr8js departs from the instruction set manual; each has a check of its own below. */
const isCbi = (opcode: number): boolean => (opcode & 0xff00) === 0x9800;
const isMixedFraction = (opcode: number): boolean => (opcode & 0xff88) === 0x0388;

/** Relative targets are decoded as if the instruction stood at 0, so it does. */
function compareOne(opcode: number, second: number): string | null {
  const program = new Uint16Array(0x4000);
  program[0] = opcode;
  program[1] = second;
  const data = new Uint8Array(0x900);
  chance(data);
  const [expected, got] = runBoth(program, data, 0);
  const ignored = H | (isMixedFraction(opcode) ? Z : 0);
  for (const outcome of [expected, got]) outcome.data[SREG] &= ~ignored;
  if ((expected.pc & 0x3fff) !== (got.pc & 0x3fff)) return `pc ${got.pc}, not ${expected.pc}`;
  if (expected.cycles !== got.cycles && !isCbi(opcode)) return `${got.cycles} cycles, not ${expected.cycles}`;
  const differs = got.data.findIndex((value, i) => value !== expected.data[i]);
  return differs < 0
    ? null
    : `data 0x${differs.toString(16)} ${got.data[differs]}, not ${expected.data[differs]}`;
}

/** SREG and first register after one instruction on r16, r17. */
function afterOne(
  opcode: number,
  r16: number,
  r17: number,
): { status: number; r16: number; cycles: number; core: Core } {
  const core = new Core(Uint16Array.of(opcode));
  core.data[16] = r16;
  core.data[17] = r17;
  core.pc = 1;
  const { operations, a, b } = decode(core.program);
  operations[0](core, a[0], b[0]);
  return { status: core.data[SREG], r16: core.data[16], cycles: core.cycles + 1, core };
}

const opcodes = Uint16Array.from({ length: 0x10000 }, (_, i) => i);
const all = decode(opcodes);
/** Low register of the pointer that a load moves, by its low four bits (Z+, -Z, program Z+, Y+, -Y, X+, -X). */
const movedPointer: Readonly<Record<number, number>> = { 1: 30, 2: 30, 5: 30, 9: 28, 10: 28, 13: 26, 14: 26 };
/** A load into its own moved pointer is undefined by the manual. */
const isUndefined = (word: number): boolean =>
  (word & 0xfe00) === 0x9000 && ((word >> 4) & 30) === movedPointer[word & 15];
const notComparable: readonly unknown[] = [unknown, sleep, storeProgram];
const comparable = [...opcodes].filter(
  (word) => !notComparable.includes(all.operations[word]) && !isUndefined(word),
);

describe('instruction core', () => {
  it('does every one of the 65536 words as avr8js does, flags and cycles included', () => {
    expect(comparable.length).toBeGreaterThan(60000);
    const found = comparable.flatMap((word) => {
      // The second word is an address in the RAM where the instruction takes one.
      const difference = compareOne(word, 0x200 + (random.uint32() % 0x500));
      return difference === null ? [] : [`${word.toString(16).padStart(4, '0')}: ${difference}`];
    });
    expect(found.slice(0, 40)).toEqual([]);
  });

  // The half carry by its definition, a carry or borrow between the two halves of a byte; avr8js takes bit 0.
  it('sets the half carry for every pair of bytes', () => {
    const wrong: string[] = [];
    for (let d = 0; d < 256; d++) {
      for (let r = 0; r < 256; r += 7) {
        const added = afterOne(0x0f01, d, r).status & H;
        const subtracted = afterOne(0x1b01, d, r).status & H;
        if (added !== ((d & 15) + (r & 15) > 15 ? H : 0)) wrong.push(`${d}+${r}`);
        if (subtracted !== ((d & 15) < (r & 15) ? H : 0)) wrong.push(`${d}-${r}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it('takes two cycles for CBI and sets Z of FMULSU from the whole product (instruction set manual)', () => {
    expect(afterOne(0x9800, 0, 0).cycles).toBe(2);
    // fmulsu r16, r17: -1 x 1 shifted is 0xFFFE, not zero; 0 x 1 is zero.
    expect(afterOne(0x0389, 0xff, 1).status & Z).toBe(0);
    expect(afterOne(0x0389, 0, 1).status & Z).toBe(Z);
  });

  it('runs into blank flash with words instead of going on', () => {
    const program = new Uint16Array(0x4000).fill(0xffff);
    const core = new Core(program);
    core.pc = 1;
    expect(() => unknown(core, 0, 0)).toThrow(/0xffff at 0x0, which is no instruction/);
  });

  it('names an access beyond the RAM', () => {
    const core = new Core(new Uint16Array(0x4000));
    core.pc = 5;
    expect(() => core.read(0x900)).toThrow(/reads address 0x900, beyond the RAM, at 0x8/);
    expect(() => core.write(0xffff, 1)).toThrow(/writes address 0xffff/);
  });
});
