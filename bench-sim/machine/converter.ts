// SPDX-License-Identifier: MIT
// The 10-bit converter: single and free-running conversions, 13 converter clocks each (25 the first time),
// input chosen when a conversion starts, sampled 1.5 clocks later (13.5 the first time). Volts come from the
// board; noise, gain and non-linearity are the board's, not made here.
import type { ChipBus, ChipPart } from './chip-bus.ts';
import { MachineFault } from './machine-fault.ts';
import { ADCH, ADCL, ADCSRA, ADCSRB, ADMUX, vectors } from './registers.ts';

const ADEN = 0x80;
const ADSC = 0x40;
const ADATE = 0x20;
const ADIF = 0x10;
const ADIE = 0x08;
const INTERNAL_REFERENCE = 3;

export interface AnalogSource {
  /** Volts at one of the eight inputs at a cycle. */
  readAnalog(channel: number, cycle: number): number;
  /** Supply of the converter, its usual reference. */
  readonly avccV: number;
  /** Band-gap reference, nominally 1.1 V. */
  readonly bandGapV: number;
}

/** Code of a voltage; the first transition stands at half an LSB (data sheet, converter accuracy definitions). */
export function codeOf(volts: number, referenceV: number): number {
  const code = Math.round((volts / referenceV) * 1024);
  return code < 0 ? 0 : code > 1023 ? 1023 : code;
}

export class Converter implements ChipPart {
  private control = 0;
  private enabledAt = 0;
  private first = true;
  private converting = false;
  private startedMux = 0;
  private sampled = 0;
  private result = 0;
  private locked = false;
  private readonly sampleSlot: number;
  private readonly doneSlot: number;

  constructor(
    private readonly bus: ChipBus,
    private readonly source: AnalogSource,
  ) {
    this.sampleSlot = bus.queue.slot((due) => this.sample(due));
    this.doneSlot = bus.queue.slot((due) => this.done(due));
    this.hookRegisters();
    bus.interrupts.onEntry(vectors.converter, () => this.setControl(this.control & ~ADIF));
  }

  reset(): void {
    this.control = this.result = 0;
    this.first = true;
    this.converting = this.locked = false;
    this.bus.queue.clear(this.sampleSlot);
    this.bus.queue.clear(this.doneSlot);
  }

  private hookRegisters(): void {
    const { readHooks, writeHooks } = this.bus;
    readHooks[ADCSRA] = () => this.control;
    writeHooks[ADCSRA] = (value, _old, _address, mask) => this.writeControl(value, mask);
    readHooks[ADCL] = () => {
      this.locked = true;
      return this.shifted() & 0xff;
    };
    readHooks[ADCH] = () => {
      this.locked = false;
      return this.shifted() >> 8;
    };
    writeHooks[ADCL] = writeHooks[ADCH] = () => true;
  }

  private shifted(): number {
    return this.bus.data[ADMUX] & 0x20 ? this.result << 6 : this.result;
  }

  private writeControl(value: number, mask: number): true {
    const now = this.bus.now();
    const flag = this.control & ADIF & ~(value & mask);
    const wasOn = (this.control & ADEN) !== 0;
    if (!wasOn && value & ADEN) {
      this.enabledAt = now;
      this.first = true;
    }
    if (!(value & ADEN)) this.stop();
    this.setControl((value & ~(ADIF | ADSC)) | flag | (this.converting ? ADSC : 0));
    if (value & ADEN && value & ADSC && !this.converting) this.start(this.nextClock(now));
    return true;
  }

  private stop(): void {
    this.converting = false;
    this.bus.queue.clear(this.sampleSlot);
    this.bus.queue.clear(this.doneSlot);
  }

  private setControl(value: number): void {
    this.control = this.bus.data[ADCSRA] = value;
    const wanted = (value & ADIF) !== 0 && (value & ADIE) !== 0;
    this.bus.interrupts.want(vectors.converter, wanted, this.bus.now());
  }

  private get divider(): number {
    return Math.max(2, 1 << (this.control & 7));
  }

  /** Next rising edge of the converter clock, whose prescaler starts when the converter is enabled. */
  private nextClock(now: number): number {
    const { divider } = this;
    return this.enabledAt + (Math.floor((now - this.enabledAt) / divider) + 1) * divider;
  }

  private start(cycle: number): void {
    this.converting = true;
    this.control |= ADSC;
    this.startedMux = this.bus.data[ADMUX];
    const { divider } = this;
    this.bus.queue.set(this.sampleSlot, cycle + divider * (this.first ? 13.5 : 1.5));
    this.bus.queue.set(this.doneSlot, cycle + divider * (this.first ? 25 : 13));
    this.first = false;
  }

  private sample(due: number): void {
    this.sampled = codeOf(this.volts(this.startedMux & 15, due), this.referenceV());
  }

  private volts(input: number, cycle: number): number {
    if (input < 8) return this.source.readAnalog(input, cycle);
    if (input === 14) return this.source.bandGapV;
    if (input === 15) return 0;
    throw new MachineFault(`Converter: input ${input} is not modelled.`);
  }

  private referenceV(): number {
    const choice = this.startedMux >> 6;
    if (choice === 1) return this.source.avccV;
    if (choice === INTERNAL_REFERENCE) return this.source.bandGapV;
    throw new MachineFault(
      'Converter: nothing but a capacitor is at AREF, so it is no reference (REFS = 0).',
    );
  }

  private done(due: number): void {
    if (!this.locked) this.result = this.sampled;
    this.converting = false;
    const freeRunning = (this.control & ADATE) !== 0 && (this.bus.data[ADCSRB] & 7) === 0;
    this.control = (this.control & ~ADSC) | ADIF;
    if (freeRunning) this.start(due);
    this.bus.data[ADCSRA] = this.control;
    this.bus.interrupts.want(vectors.converter, (this.control & ADIE) !== 0, due);
  }
}
