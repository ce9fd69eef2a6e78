// SPDX-License-Identifier: MIT
// Data transfer instructions after the AVR instruction set manual. `a` is the register, `b` an address, a
// displacement, a constant or the other register. Every data space access takes two cycles.
import type { Core, Operation } from './core.ts';
import { MachineFault } from './machine-fault.ts';

export const X = 26;
export const Y = 28;
export const ZP = 30;

function pointer(core: Core, low: number): number {
  return core.data[low] | (core.data[low + 1] << 8);
}
function setPointer(core: Core, low: number, value: number): void {
  core.data[low] = value;
  core.data[low + 1] = value >> 8;
}

export const move: Operation = (core, a, b) => {
  core.data[a] = core.data[b];
};
export const moveWord: Operation = (core, a, b) => {
  core.data[a] = core.data[b];
  core.data[a + 1] = core.data[b + 1];
};
export const loadConstant: Operation = (core, a, b) => {
  core.data[a] = b;
};
export const loadDirect: Operation = (core, a) => {
  core.data[a] = core.read(core.program[core.pc]);
  core.pc++;
  core.cycles++;
};
export const storeDirect: Operation = (core, a) => {
  core.write(core.program[core.pc], core.data[a]);
  core.pc++;
  core.cycles++;
};
/** Loads and stores with displacement `b` from a pointer. */
export const loadFrom =
  (low: number): Operation =>
  (core, a, b) => {
    core.data[a] = core.read(pointer(core, low) + b);
    core.cycles++;
  };
export const storeTo =
  (low: number): Operation =>
  (core, a, b) => {
    core.write(pointer(core, low) + b, core.data[a]);
    core.cycles++;
  };
export const loadThenUp =
  (low: number): Operation =>
  (core, a) => {
    const at = pointer(core, low);
    setPointer(core, low, at + 1);
    core.data[a] = core.read(at);
    core.cycles++;
  };
export const storeThenUp =
  (low: number): Operation =>
  (core, a) => {
    const at = pointer(core, low);
    core.write(at, core.data[a]);
    setPointer(core, low, at + 1);
    core.cycles++;
  };
export const downThenLoad =
  (low: number): Operation =>
  (core, a) => {
    const at = (pointer(core, low) - 1) & 0xffff;
    setPointer(core, low, at);
    core.data[a] = core.read(at);
    core.cycles++;
  };
export const downThenStore =
  (low: number): Operation =>
  (core, a) => {
    const at = (pointer(core, low) - 1) & 0xffff;
    core.write(at, core.data[a]);
    setPointer(core, low, at);
    core.cycles++;
  };

function programByte(core: Core): number {
  const at = pointer(core, ZP);
  const word = core.program[(at >> 1) & (core.program.length - 1)];
  return at & 1 ? word >> 8 : word & 0xff;
}
export const loadProgram: Operation = (core, a) => {
  core.data[a] = programByte(core);
  core.cycles += 2;
};
export const loadProgramThenUp: Operation = (core, a) => {
  core.data[a] = programByte(core);
  setPointer(core, ZP, pointer(core, ZP) + 1);
  core.cycles += 2;
};

export const input: Operation = (core, a, b) => {
  core.data[a] = core.read(b);
};
export const output: Operation = (core, a, b) => {
  core.write(b, core.data[a]);
};
export const push: Operation = (core, a) => {
  core.pushByte(core.data[a]);
  core.cycles++;
};
export const pop: Operation = (core, a) => {
  core.data[a] = core.popByte();
  core.cycles++;
};
export const storeProgram: Operation = (core) => {
  throw new MachineFault(`Writing the flash (SPM at 0x${(2 * (core.pc - 1)).toString(16)}) is not modelled.`);
};
