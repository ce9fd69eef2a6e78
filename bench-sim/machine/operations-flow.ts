// SPDX-License-Identifier: MIT
// Branches, calls, skips and control instructions after the AVR instruction set manual. `a` is a target, a
// distance or a register, `b` a bit mask or the other register.
import type { Core, Operation } from './core.ts';
import { MachineFault } from './machine-fault.ts';
import * as registers from './registers.ts';

// Copied once: where modules are transformed (tests, some loaders) an imported name costs a call at each use.
const { SREG } = registers;

const Z_POINTER = 30;

export const jumpNear: Operation = (core, a) => {
  core.pc = a;
  core.cycles++;
};
export const jump: Operation = (core) => {
  core.pc = core.program[core.pc];
  core.cycles += 2;
};
export const jumpIndirect: Operation = (core) => {
  core.pc = core.data[Z_POINTER] | (core.data[Z_POINTER + 1] << 8);
  core.cycles++;
};
export const callNear: Operation = (core, a) => {
  core.pushPc();
  core.pc = a;
  core.cycles += 2;
};
export const call: Operation = (core) => {
  const target = core.program[core.pc];
  core.pc++;
  core.pushPc();
  core.pc = target;
  core.cycles += 3;
};
export const callIndirect: Operation = (core) => {
  core.pushPc();
  core.pc = core.data[Z_POINTER] | (core.data[Z_POINTER + 1] << 8);
  core.cycles += 2;
};
export const returnFromCall: Operation = (core) => {
  core.popPc();
  core.cycles += 3;
};
export const returnFromInterrupt: Operation = (core) => {
  core.popPc();
  core.data[SREG] |= 0x80;
  core.cycles += 3;
  core.onInterruptReturn();
};
/** `a` is the target, `b` the flag. */
export const branchIfSet: Operation = (core, a, b) => {
  if ((core.data[SREG] & b) === 0) return;
  core.pc = a;
  core.cycles++;
};
export const branchIfClear: Operation = (core, a, b) => {
  if ((core.data[SREG] & b) !== 0) return;
  core.pc = a;
  core.cycles++;
};

/** LDS, STS, JMP and CALL take two words. */
export function takesTwoWords(opcode: number): boolean {
  return (opcode & 0xfc0f) === 0x9000 || (opcode & 0xfe0c) === 0x940c;
}
function skip(core: Core): void {
  const words = takesTwoWords(core.program[core.pc]) ? 2 : 1;
  core.pc += words;
  core.cycles += words;
}
export const skipIfEqual: Operation = (core, a, b) => {
  if (core.data[a] === core.data[b]) skip(core);
};
export const skipIfBitClear: Operation = (core, a, b) => {
  if ((core.data[a] & b) === 0) skip(core);
};
export const skipIfBitSet: Operation = (core, a, b) => {
  if ((core.data[a] & b) !== 0) skip(core);
};
export const skipIfIoClear: Operation = (core, a, b) => {
  if ((core.read(a) & b) === 0) skip(core);
};
export const skipIfIoSet: Operation = (core, a, b) => {
  if ((core.read(a) & b) !== 0) skip(core);
};

export const nothing: Operation = () => undefined;
export const sleep: Operation = (core) => core.onSleep();
export const watchdogReset: Operation = (core) => core.onWatchdogReset();
/** Blank or foreign flash: a real chip would run on into nonsense. */
export const unknown: Operation = (core) => {
  const at = core.pc - 1;
  const word = core.program[at].toString(16).padStart(4, '0');
  throw new MachineFault(
    `The program runs into 0x${word} at 0x${(2 * at).toString(16)}, which is no instruction.`,
  );
};
