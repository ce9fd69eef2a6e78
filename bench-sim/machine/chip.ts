// SPDX-License-Identifier: MIT
// The ATmega328P: instruction core, parts, resets and the run loop. Sleep skips straight to the next event;
// interrupts enter in four cycles and never between SEI (or RETI) and the instruction after it.
// It does not know the board around it.
import { hookByteTimer } from './byte-timer-access.ts';
import type { ChipBus, ChipPart } from './chip-bus.ts';
import { CompareTimer } from './compare-timer.ts';
import { Core } from './core.ts';
import { decode, type Decoded } from './decoder.ts';
import { type AnalogSource, Converter } from './converter.ts';
import { Eeprom } from './eeprom.ts';
import { EventQueue } from './event-queue.ts';
import { InputCapture } from './input-capture.ts';
import { Instruments } from './instruments.ts';
import type { Program } from './intel-hex.ts';
import { Interrupts } from './interrupts.ts';
import { MachineFault } from './machine-fault.ts';
import { PinInterrupts } from './pin-interrupts.ts';
import { Port } from './port.ts';
import * as registers from './registers.ts';
import { Spi } from './spi.ts';
import { staticEnd } from './static-end.ts';
import { Timer1Access } from './timer1-access.ts';
import { TCCR0A, TCCR2A, timerPlans } from './timer-plans.ts';
import { Usart } from './usart.ts';
import { Watchdog } from './watchdog.ts';

// Copied once: where modules are transformed (tests, some loaders) an imported name costs a call at each use.
const { GTCCR, MCUSR, PINB, PINC, PIND, RAMEND, RAMSTART, SMCR, SREG } = registers;

export type ResetCause = 'powerOn' | 'external' | 'brownOut' | 'watchdog';
const CAUSE_BITS: Readonly<Record<ResetCause, number>> = {
  powerOn: 1,
  external: 2,
  brownOut: 4,
  watchdog: 8,
};
const PC_MASK = 0x3fff;

export interface ChipOptions {
  readonly program: Program;
  readonly clockHz: number;
  readonly analog: AnalogSource;
  /** How long a reset holds the processor: start-up time by fuses. */
  readonly resetHoldCycles: number;
  readonly watchdogError: number;
}

export class Chip {
  readonly queue = new EventQueue();
  readonly interrupts = new Interrupts();
  readonly ports: { readonly b: Port; readonly c: Port; readonly d: Port };
  readonly usart: Usart;
  readonly eeprom: Eeprom;
  readonly spi: Spi;
  readonly capture: InputCapture;
  readonly instruments: Instruments;
  onReset: (cause: ResetCause) => void = () => undefined;
  readonly core: Core;
  private readonly decoded: Decoded;
  private readonly parts: readonly ChipPart[];
  private readonly watchdog: Watchdog;
  private asleep = false;
  private heldUntil = 0;

  constructor(private readonly options: ChipOptions) {
    this.core = new Core(options.program.words);
    this.decoded = decode(options.program.words);
    const bus = this.makeBus();
    this.ports = { b: new Port(bus, PINB), c: new Port(bus, PINC), d: new Port(bus, PIND) };
    const plans = timerPlans(this.ports.b);
    const timers = [plans.timer0, plans.timer1, plans.timer2].map((plan) => new CompareTimer(bus, plan));
    this.capture = new InputCapture(bus, timers[1]);
    this.usart = new Usart(bus);
    this.eeprom = new Eeprom(bus, options.clockHz);
    this.spi = new Spi(bus);
    this.watchdog = new Watchdog(bus, options.clockHz, options.watchdogError);
    this.watchdog.onReset = () => this.reset('watchdog');
    this.core.onWatchdogReset = () => this.watchdog.feed();
    this.core.onSleep = () => this.sleep();
    this.core.onInterruptReturn = () => this.instruments.left(this.core.cycles + 1);
    const pins = new PinInterrupts(bus, [this.ports.b, this.ports.c, this.ports.d]);
    const converter = new Converter(bus, options.analog);
    const access = new Timer1Access(bus, timers[1], this.capture);
    const { b, c, d } = this.ports;
    this.parts = [
      b,
      c,
      d,
      pins,
      ...timers,
      this.capture,
      access,
      converter,
      this.usart,
      this.spi,
      this.eeprom,
      this.watchdog,
    ];
    hookByteTimer(bus, timers[0], TCCR0A);
    hookByteTimer(bus, timers[2], TCCR2A);
    this.hookPrescaler(bus, timers);
    this.ports.b.listen((level, changed, cycle) => {
      if (changed & 1) this.capture.pinChanged((level & 1) !== 0, cycle);
    });
    this.instruments = new Instruments(this.core, staticEnd(options.program.words));
    this.reset('powerOn');
  }

  get cycles(): number {
    return this.core.cycles;
  }

  /** What the RAM happens to hold after power-on. */
  fillRam(byte: () => number): void {
    for (let address = RAMSTART; address <= RAMEND; address++) this.core.data[address] = byte();
  }

  /** Everything goes back to its initial state but RAM and EEPROM; execution starts after the hold. */
  reset(cause: ResetCause): void {
    const { data } = this.core;
    const causes = cause === 'powerOn' ? 0 : data[MCUSR];
    data.fill(0, 0x20, 0x100);
    data[MCUSR] = causes | CAUSE_BITS[cause];
    this.core.pc = 0;
    this.core.stackPointer = RAMEND;
    this.interrupts.reset();
    for (const part of this.parts) part.reset();
    this.asleep = false;
    this.heldUntil = this.cycles + this.options.resetHoldCycles;
    this.instruments.wasReset();
    this.onReset(cause);
  }

  /** Holds the chip in reset (external line low, supply down) until so many cycles from now, then start-up. */
  holdReset(cause: ResetCause, cycles: number): void {
    this.reset(cause);
    this.heldUntil += cycles;
  }

  /** Runs until at least `until`; the last instruction may end a few cycles later. */
  run(until: number): void {
    const { core, queue, interrupts } = this;
    const { operations, a, b } = this.decoded;
    const { data } = core;
    while (core.cycles < until) {
      if (this.asleep || core.cycles < this.heldUntil) {
        this.rest(until);
        continue;
      }
      const enabledBefore = data[SREG];
      const pc = core.pc & PC_MASK;
      core.pc = pc + 1;
      operations[pc](core, a[pc], b[pc]);
      core.cycles++;
      if (this.asleep) continue;
      if (queue.next <= core.cycles) queue.fire(core.cycles);
      if (interrupts.pending !== 0 && (enabledBefore & data[SREG] & 0x80) !== 0) this.enterInterrupt();
    }
  }

  private makeBus(): ChipBus {
    const { core, queue, interrupts } = this;
    return {
      data: core.data,
      readHooks: core.readHooks,
      writeHooks: core.writeHooks,
      queue,
      interrupts,
      now: () => core.cycles,
      stall: (cycles) => {
        core.cycles += cycles;
      },
    };
  }

  private hookPrescaler(bus: ChipBus, timers: readonly CompareTimer[]): void {
    bus.writeHooks[GTCCR] = (value) => {
      if (value & 0x80) throw new MachineFault('Timers: halting the prescaler (TSM) is not modelled.');
      if (value & 1) timers.slice(0, 2).forEach((timer) => timer.restartPrescaler(bus.now()));
      if (value & 2) timers[2].restartPrescaler(bus.now());
      return true;
    };
  }

  /** What is pending already wakes it in `rest`. */
  private sleep(): void {
    const mode = this.core.data[SMCR];
    if (!(mode & 1)) return;
    if (mode & 0x0e) throw new MachineFault(`Sleep mode ${(mode >> 1) & 7} is not modelled (idle is).`);
    this.asleep = true;
  }

  /** Skips to the next event while asleep or held in reset. Waking costs four cycles more (data sheet). */
  private rest(until: number): void {
    const { core, queue, interrupts } = this;
    const held = core.cycles < this.heldUntil;
    if (!held && interrupts.pending !== 0 && core.data[SREG] & 0x80) {
      this.asleep = false;
      core.cycles += 4;
      this.enterInterrupt();
      return;
    }
    const from = core.cycles;
    const limit = held ? Math.min(until, this.heldUntil) : until;
    core.cycles = Math.max(from, Math.min(queue.next, limit));
    if (!held) this.instruments.idleCycles += core.cycles - from;
    if (queue.next <= core.cycles) queue.fire(core.cycles);
    if (held && core.cycles >= this.heldUntil) this.watchdog.feed();
  }

  private enterInterrupt(): void {
    const { core, interrupts } = this;
    const vector = interrupts.first();
    this.instruments.entered(vector, core.cycles, interrupts.since[vector]);
    core.pushPc();
    core.data[SREG] &= 0x7f;
    core.cycles += 4;
    core.pc = vector * 2;
    interrupts.enter(vector);
  }
}
