// SPDX-License-Identifier: MIT
// The state of the instruction core: data space with hooks, program counter, cycle counter, stack. Operations
// work on it; it knows no instruction and no part of the chip.
import type { ReadHook, WriteHook } from './chip-bus.ts';
import { MachineFault } from './machine-fault.ts';
import * as registers from './registers.ts';

// Copied once: where modules are transformed (tests, some loaders) an imported name costs a call at each use.
const { RAMEND, SPL, SREG } = registers;

const DATA_BYTES = RAMEND + 1;
const HOOKED = 0x100;

export class Core {
  readonly data = new Uint8Array(DATA_BYTES);
  readonly readHooks: (ReadHook | undefined)[] = Array.from({ length: HOOKED }, () => undefined);
  readonly writeHooks: (WriteHook | undefined)[] = Array.from({ length: HOOKED }, () => undefined);
  /** Word address of the next instruction. */
  pc = 0;
  /** Cycles since power-on. */
  cycles = 0;
  /** Lowest stack pointer that a push, call or interrupt has left. */
  lowestStack = RAMEND;
  onSleep: () => void = () => undefined;
  onWatchdogReset: () => void = () => undefined;
  onInterruptReturn: () => void = () => undefined;

  constructor(readonly program: Uint16Array) {}

  get stackPointer(): number {
    return this.data[SPL] | (this.data[SPL + 1] << 8);
  }
  set stackPointer(value: number) {
    this.data[SPL] = value;
    this.data[SPL + 1] = value >> 8;
  }

  read(address: number): number {
    if (address >= HOOKED) return address < DATA_BYTES ? this.data[address] : this.beyond('reads', address);
    const hook = this.readHooks[address];
    return hook === undefined ? this.data[address] : hook(address);
  }

  write(address: number, value: number, mask = 0xff): void {
    if (address >= HOOKED) {
      if (address >= DATA_BYTES) this.beyond('writes', address);
      this.data[address] = value;
      return;
    }
    const hook = this.writeHooks[address];
    if (hook !== undefined && hook(value, this.data[address], address, mask)) return;
    this.data[address] = value;
  }

  pushByte(value: number): void {
    const at = this.stackPointer;
    this.write(at, value);
    this.stackPointer = at - 1;
    if (at <= this.lowestStack) this.lowestStack = at - 1;
  }

  popByte(): number {
    const at = this.stackPointer + 1;
    this.stackPointer = at;
    return this.read(at);
  }

  pushPc(): void {
    this.pushByte(this.pc & 0xff);
    this.pushByte(this.pc >> 8);
  }

  popPc(): void {
    const high = this.popByte();
    this.pc = (high << 8) | this.popByte();
  }

  get interruptsOn(): boolean {
    return (this.data[SREG] & 0x80) !== 0;
  }

  private beyond(verb: string, address: number): never {
    const at = (2 * (this.pc - 1)).toString(16);
    throw new MachineFault(
      `The program ${verb} address 0x${address.toString(16)}, beyond the RAM, at 0x${at}.`,
    );
  }
}

/** One instruction on the core with its decoded operands. The program counter already points behind it. */
export type Operation = (core: Core, a: number, b: number) => void;
