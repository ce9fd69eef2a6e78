// SPDX-License-Identifier: MIT
// The emulator's instruction core against the stock core of avr8js: both run the committed firmware from reset in
// lock-step, with the registers of the peripherals as plain bytes and interrupts given to both at the same
// instruction. It times cores alone; the whole rig is timed elsewhere.
import { avrInstruction, avrInterrupt, CPU } from 'avr8js';
import { Core } from '#sim/machine/core';
import { decode } from '#sim/machine/decoder';
import { readHex } from '#sim/machine/intel-hex';
import { RAMEND, SREG, vectors } from '#sim/machine/registers';
import type { Benchmark } from './benchmark.ts';
import { cpuSeconds } from './cpu-time.ts';
import { firmwareHex } from './firmware-file.ts';

const PC_MASK = 0x3fff;
const FIRST_RAM = 0x100;
/** SPI transfers are always over and the transmitter is always ready: the firmware never waits for ever. */
const ready: readonly (readonly [register: number, value: number])[] = [
  [0x4d, 0x80],
  [0xc0, 0x20],
];
const given = [vectors.converter, vectors.timer1CompareA, vectors.timer0CompareA] as const;
/** Instructions from one interrupt to the next; a prime, so that it meets the main loop everywhere. */
const stretch = 389;
const INTERRUPTS_ON = 0x80;
const turnsOfRound = 1000;

export class LockStep {
  readonly own: Core;
  readonly stock: CPU;
  private readonly program = readHex(firmwareHex()).words;
  private readonly decoded = decode(this.program);

  constructor() {
    this.own = new Core(this.program);
    this.stock = new CPU(this.program, RAMEND + 1 - FIRST_RAM);
    for (const core of [this.own, this.stock]) {
      core.data.fill(0);
      for (const [register, value] of ready) {
        core.data[register] = value;
        core.writeHooks[register] = () => true;
      }
    }
    this.own.stackPointer = RAMEND;
    this.stock.dataView.setUint16(0x5d, RAMEND, true);
  }
  /** So many stretches, an interrupt after each where the firmware allows it. */
  runOwn(turns: number): void {
    const { own } = this;
    const { operations, a, b } = this.decoded;
    for (let turn = 0; turn < turns; turn++) {
      for (let i = 0; i < stretch; i++) {
        const pc = own.pc & PC_MASK;
        own.pc = pc + 1;
        operations[pc](own, a[pc], b[pc]);
        own.cycles++;
      }
      if (own.data[SREG] & INTERRUPTS_ON) this.enterOwn(given[turn % given.length] * 2);
    }
  }
  runStock(turns: number): void {
    const { stock } = this;
    for (let turn = 0; turn < turns; turn++) {
      for (let i = 0; i < stretch; i++) avrInstruction(stock);
      if (stock.interruptsEnabled) avrInterrupt(stock, given[turn % given.length] * 2);
    }
  }
  private enterOwn(address: number): void {
    this.own.pushPc();
    this.own.data[SREG] &= ~INTERRUPTS_ON;
    this.own.pc = address;
  }
  /** Throws when the cores are not at the same instruction with the same stack. */
  requireSame(): void {
    const { own, stock } = this;
    if ((own.pc & PC_MASK) === (stock.pc & PC_MASK) && own.stackPointer === stock.SP) return;
    throw new Error(`The cores parted: ours at word ${own.pc}, avr8js at word ${stock.pc}.`);
  }
}
/** Processor time of both for the same instructions, in alternation. */
export function coreBenchmark(rounds: number): Benchmark {
  const both = new LockStep();
  const round = async () => {
    const ownS = await cpuSeconds(() => both.runOwn(turnsOfRound));
    const stockS = await cpuSeconds(() => both.runStock(turnsOfRound));
    both.requireSame();
    return { ownS, stockS };
  };
  return {
    id: 'core-against-avr8js',
    title: 'Instruction core on the firmware, in lock-step with the stock core',
    of: 'processor time of the avr8js core',
    against: 'processor time of the own core',
    ratio: async () => {
      const sum = { ownS: 0, stockS: 0 };
      for (let i = 0; i < rounds; i++) {
        const { ownS, stockS } = await round();
        sum.ownS += ownS;
        sum.stockS += stockS;
      }
      return sum.stockS / sum.ownS;
    },
  };
}
