// SPDX-License-Identifier: MIT
// What every part of the chip is built on: the data space with its hooks, the event queue, the interrupt
// lines and the cycle counter. Parts know this and nothing of each other.
import type { EventQueue } from './event-queue.ts';
import type { Interrupts } from './interrupts.ts';

export type ReadHook = (address: number) => number;
/** Returns true when the hook itself stored what is to be stored. `mask` tells the bit of SBI and CBI. */
export type WriteHook = (value: number, oldValue: number, address: number, mask: number) => boolean | void;

export interface ChipBus {
  readonly data: Uint8Array;
  readonly readHooks: (ReadHook | undefined)[];
  readonly writeHooks: (WriteHook | undefined)[];
  readonly queue: EventQueue;
  readonly interrupts: Interrupts;
  /** Cycles since power-on. */
  now(): number;
  /** Holds the processor for so many cycles (EEPROM access). */
  stall(cycles: number): void;
}

/** A part that a reset puts back into its initial state. */
export interface ChipPart {
  reset(): void;
}
