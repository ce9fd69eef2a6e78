// SPDX-License-Identifier: MIT
// The serial peripheral interface as a master that sends bytes: clock rate, write collision, flag and
// interrupt. Whole bytes leave at the end of their eighth clock; pin levels of a transfer are not shown.
import type { ChipBus, ChipPart } from './chip-bus.ts';
import { MachineFault } from './machine-fault.ts';
import { SPCR, SPDR, SPSR, vectors } from './registers.ts';

const SPIE = 0x80;
const SPE = 0x40;
const DORD = 0x20;
const MSTR = 0x10;
const SPIF = 0x80;
const WCOL = 0x40;
const DIVIDERS = [4, 16, 64, 128] as const;

export class Spi implements ChipPart {
  /** A byte has been clocked out, in the order it went over the wire (bit 7 first). */
  onByte: (byte: number, cycle: number) => void = () => undefined;
  private flags = 0;
  private flagSeen = false;
  private shifting = false;
  private out = 0;
  private readonly slot: number;

  constructor(private readonly bus: ChipBus) {
    this.slot = bus.queue.slot((due) => this.finished(due));
    const { readHooks, writeHooks, data } = bus;
    readHooks[SPSR] = () => {
      this.flagSeen = (this.flags & SPIF) !== 0;
      return this.flags | (data[SPSR] & 1);
    };
    readHooks[SPDR] = () => {
      this.dataTouched();
      return data[SPDR];
    };
    writeHooks[SPDR] = (value) => this.writeData(value);
    writeHooks[SPCR] = (value) => {
      data[SPCR] = value;
      this.update(bus.now());
      return true;
    };
    bus.interrupts.onEntry(vectors.spi, () => this.clearFlag());
  }

  get enabled(): boolean {
    return (this.bus.data[SPCR] & SPE) !== 0;
  }

  reset(): void {
    this.flags = 0;
    this.shifting = this.flagSeen = false;
    this.bus.queue.clear(this.slot);
  }

  private writeData(value: number): true {
    const control = this.bus.data[SPCR];
    if (!(control & SPE)) return true;
    if (!(control & MSTR)) throw new MachineFault('SPI: only the master is modelled.');
    this.dataTouched();
    if (this.shifting) {
      this.flags |= WCOL;
      return true;
    }
    this.out = value;
    this.shifting = true;
    const divider = DIVIDERS[control & 3] / (this.bus.data[SPSR] & 1 ? 2 : 1);
    this.bus.queue.set(this.slot, this.bus.now() + 8 * divider);
    return true;
  }

  private finished(due: number): void {
    this.shifting = false;
    this.flags |= SPIF;
    this.update(due);
    this.onByte(this.bus.data[SPCR] & DORD ? reversed(this.out) : this.out, due);
  }

  /** Reading the status and then touching the data clears the flags. */
  private dataTouched(): void {
    if (this.flagSeen) this.clearFlag();
  }

  private clearFlag(): void {
    this.flags = 0;
    this.flagSeen = false;
    this.update(this.bus.now());
  }

  private update(cycle: number): void {
    const wanted = (this.flags & SPIF) !== 0 && (this.bus.data[SPCR] & SPIE) !== 0;
    this.bus.interrupts.want(vectors.spi, wanted, cycle);
  }
}

function reversed(byte: number): number {
  let result = 0;
  for (let bit = 0; bit < 8; bit++) if (byte & (1 << bit)) result |= 0x80 >> bit;
  return result;
}
