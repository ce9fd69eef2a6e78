// SPDX-License-Identifier: MIT
// The 1 KiB EEPROM with its write times, unlock window and ready interrupt. The content outlives resets and
// can be taken out and put in. A write under way when the chip is reset is completed.
import type { ChipBus, ChipPart } from './chip-bus.ts';
import { EEARH, EEARL, EECR, EEDR, vectors } from './registers.ts';

export const EEPROM_BYTES = 1024;
const EERE = 1;
const EEPE = 2;
const EEMPE = 4;
const EERIE = 8;
/** Programming times by mode bits: erase and write 3.4 ms, erase only and write only 1.8 ms (data sheet). */
const MODE_SECONDS = [3.4e-3, 1.8e-3, 1.8e-3, 3.4e-3] as const;

export class Eeprom implements ChipPart {
  readonly content = new Uint8Array(EEPROM_BYTES).fill(0xff);
  private busy = false;
  private unlockedUntil = -1;
  private readonly slot: number;

  constructor(
    private readonly bus: ChipBus,
    private readonly clockHz: number,
  ) {
    this.slot = bus.queue.slot((due) => this.finished(due));
    bus.readHooks[EECR] = () => this.control();
    bus.writeHooks[EECR] = (value) => this.writeControl(value);
    bus.writeHooks[EEDR] =
      bus.writeHooks[EEARL] =
      bus.writeHooks[EEARH] =
        (value, _old, address) => {
          if (!this.busy || address === EEDR) bus.data[address] = value;
          return true;
        };
  }

  reset(): void {
    this.unlockedUntil = -1;
    this.update(this.bus.now());
  }

  private control(): number {
    const unlocked = this.bus.now() <= this.unlockedUntil ? EEMPE : 0;
    return (this.bus.data[EECR] & 0x38) | (this.busy ? EEPE : 0) | unlocked;
  }

  private writeControl(value: number): true {
    const { data } = this.bus;
    const now = this.bus.now();
    const mode = this.busy ? data[EECR] & 0x30 : value & 0x30;
    data[EECR] = mode | (value & EERIE);
    if (value & EEPE && !this.busy && now <= this.unlockedUntil) this.program(now);
    else if (value & EEMPE) this.unlockedUntil = now + 4;
    if (value & EERE && !this.busy) this.read();
    this.update(now);
    return true;
  }

  private get address(): number {
    return ((this.bus.data[EEARH] << 8) | this.bus.data[EEARL]) % EEPROM_BYTES;
  }

  private read(): void {
    this.bus.data[EEDR] = this.content[this.address];
    this.bus.stall(4);
  }

  private program(now: number): void {
    const mode = (this.bus.data[EECR] >> 4) & 3;
    const { address } = this;
    if (mode !== 2) this.content[address] = 0xff;
    if (mode !== 1) this.content[address] &= this.bus.data[EEDR];
    this.busy = true;
    this.unlockedUntil = -1;
    this.bus.queue.set(this.slot, Math.round(now + MODE_SECONDS[mode] * this.clockHz));
    this.bus.stall(2);
  }

  private finished(due: number): void {
    this.busy = false;
    this.update(due);
  }

  private update(cycle: number): void {
    const wanted = !this.busy && (this.bus.data[EECR] & EERIE) !== 0;
    this.bus.interrupts.want(vectors.eepromReady, wanted, cycle);
  }
}
