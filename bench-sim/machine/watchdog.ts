// SPDX-License-Identifier: MIT
// The watchdog with its own 128 kHz oscillator: interrupt mode, reset mode, interrupt then reset, the timed
// change sequence, and WDRF keeping it on after a reset it caused. It does not perform the reset itself.
import type { ChipBus, ChipPart } from './chip-bus.ts';
import { MCUSR, WDTCSR, vectors } from './registers.ts';

const WDIF = 0x80;
const WDIE = 0x40;
const WDCE = 0x10;
const WDE = 0x08;
const PRESCALE_BITS = 0x27;
export const WDRF = 0x08;
const OSCILLATOR_HZ = 128e3;

export class Watchdog implements ChipPart {
  onReset: () => void = () => undefined;
  private control = 0;
  private changeUntil = -1;
  private readonly slot: number;
  private readonly cyclesPerTick: number;

  /** `oscillatorError` is the relative error of the watchdog's own oscillator against the processor's clock. */
  constructor(
    private readonly bus: ChipBus,
    clockHz: number,
    oscillatorError: number,
  ) {
    this.cyclesPerTick = clockHz / (OSCILLATOR_HZ * (1 + oscillatorError));
    this.slot = bus.queue.slot((due) => this.expired(due));
    bus.readHooks[WDTCSR] = () => this.control;
    bus.writeHooks[WDTCSR] = (value, _old, _address, mask) => this.write(value, mask);
    bus.interrupts.onEntry(vectors.watchdog, () => this.enteredInterrupt());
  }

  /** The WDR instruction; also the end of a reset, from which its time counts. */
  feed(): void {
    this.restart(this.bus.now());
  }

  /** After a watchdog reset it stays on at its shortest time (WDRF holds WDE). */
  reset(): void {
    this.control = this.bus.data[MCUSR] & WDRF ? WDE : 0;
    this.changeUntil = -1;
    this.bus.queue.clear(this.slot);
  }

  private write(value: number, mask: number): true {
    const now = this.bus.now();
    const flag = this.control & WDIF & ~(value & mask);
    if (value & WDCE && value & WDE) {
      this.changeUntil = now + 4;
      this.control = (this.control & ~(WDIE | WDIF)) | (value & WDIE) | WDE | flag;
    } else {
      this.change(value, now <= this.changeUntil, flag);
    }
    this.restart(now);
    this.update(now);
    return true;
  }

  private change(value: number, unlocked: boolean, flag: number): void {
    const forced = this.bus.data[MCUSR] & WDRF ? WDE : 0;
    const kept = unlocked
      ? value & (WDE | PRESCALE_BITS)
      : (this.control & (WDE | PRESCALE_BITS)) | (value & WDE);
    this.control = kept | forced | (value & WDIE) | flag;
  }

  private restart(cycle: number): void {
    if ((this.control & (WDE | WDIE)) === 0) {
      this.bus.queue.clear(this.slot);
      return;
    }
    const power = (this.control & 7) | (this.control & 0x20 ? 8 : 0);
    this.bus.queue.set(this.slot, Math.round(cycle + (2048 << power) * this.cyclesPerTick));
  }

  private expired(due: number): void {
    if (this.control & WDIE) {
      this.control |= WDIF;
      this.update(due);
      this.restart(due);
    } else {
      this.onReset();
    }
  }

  private enteredInterrupt(): void {
    this.control &= ~WDIF;
    if (this.control & WDE) this.control &= ~WDIE;
    this.update(this.bus.now());
  }

  private update(cycle: number): void {
    const wanted = (this.control & WDIF) !== 0 && (this.control & WDIE) !== 0;
    this.bus.interrupts.want(vectors.watchdog, wanted, cycle);
  }
}
