// SPDX-License-Identifier: MIT
// The rig's board: chip, shift registers, analog multiplexer, capture selector, dead-man, pull-downs, by the
// pin map. It shows what leaves at its terminals and takes what comes in; it knows no car.
import { Chip, type ResetCause } from './chip.ts';
import { CaptureSelector } from './capture-selector.ts';
import { DeadMan } from './dead-man.ts';
import type { Program } from './intel-hex.ts';
import { ShiftRegisters } from './shift-registers.ts';

/** Pins of the map; port bits. */
const B = { capture: 0, steering: 1, throttle: 2, data: 3, stop: 4, clock: 5 } as const;
const D = { receiver1: 2, receiver2: 3, latch: 4, hallB: 5, hallC: 6, deadMan: 7 } as const;
const MULTIPLEXER_CHANNEL = 7;
/** Start-up of the usual fuses: 16k clocks and 65 ms (data sheet). */
const START_UP_S = 0.065;

export interface BoardAnalog {
  readonly avccV: number;
  readonly bandGapV: number;
  /** Volts at converter input 0..6. */
  readTap(channel: number, cycle: number): number;
  /** Volts at multiplexer input 0..7. */
  readMultiplexer(input: number, cycle: number): number;
}
export interface BoardOptions {
  readonly program: Program;
  readonly clockHz: number;
  readonly analog: BoardAnalog;
  /** Seconds the dead-man lasts without an edge. */
  readonly deadManS: number;
  readonly watchdogError: number;
  /** What the shift registers happen to hold after power-on. */
  readonly registerChance: number;
}

export class Board {
  readonly chip: Chip;
  readonly registers: ShiftRegisters;
  /** A shift register output changed. */
  onOutputs: (cycle: number) => void = () => undefined;
  /** A servo line changed: 0 steering, 1 throttle. */
  onServo: (line: 0 | 1, high: boolean, cycle: number) => void = () => undefined;
  private readonly selector = new CaptureSelector();
  private readonly deadMan: DeadMan;

  constructor(private readonly options: BoardOptions) {
    const { analog, program, clockHz, watchdogError } = options;
    this.registers = new ShiftRegisters(options.registerChance);
    this.chip = new Chip({
      program,
      clockHz,
      watchdogError,
      resetHoldCycles: Math.round(16384 + START_UP_S * clockHz),
      analog: {
        avccV: analog.avccV,
        bandGapV: analog.bandGapV,
        readAnalog: (channel, cycle) => this.readAnalog(channel, cycle),
      },
    });
    this.deadMan = new DeadMan(this.chip.queue, Math.round(options.deadManS * clockHz));
    this.wireOutputs();
    this.pullDown();
  }

  get cycles(): number {
    return this.chip.cycles;
  }
  /** The rig's light. */
  get light(): boolean {
    return (this.registers.register2 & 0x10) !== 0;
  }
  get deadManAlive(): boolean {
    return this.deadMan.alive;
  }

  setHall(line: 0 | 1 | 2, high: boolean, cycle: number): void {
    if (line === 0) this.selector.drive(0, high, cycle);
    else this.chip.ports.d.drive(line === 1 ? D.hallB : D.hallC, high, cycle);
  }

  setReceiver(channel: 1 | 2, high: boolean, cycle: number): void {
    this.selector.drive(channel, high, cycle);
    this.chip.ports.d.drive(channel === 1 ? D.receiver1 : D.receiver2, high, cycle);
  }

  /** The stop line is normally closed to ground; open, its pull-up makes D12 high. */
  setStop(open: boolean, cycle: number): void {
    this.chip.ports.b.drive(B.stop, open, cycle);
  }

  /** Reset by the reset line (port opened), or by the supply. */
  reset(cause: Exclude<ResetCause, 'watchdog'>, heldS: number): void {
    this.chip.holdReset(cause, Math.round(heldS * this.options.clockHz));
  }

  private readAnalog(channel: number, cycle: number): number {
    const { analog } = this.options;
    if (channel !== MULTIPLEXER_CHANNEL) return analog.readTap(channel, cycle);
    return analog.readMultiplexer(this.registers.register1 >> 5, cycle);
  }

  private wireOutputs(): void {
    const { chip, registers, deadMan, selector } = this;
    chip.spi.onByte = (byte) => registers.shiftByte(byte);
    chip.ports.b.listen((level, changed, cycle) => this.portBChanged(level, changed, cycle));
    chip.ports.d.listen((level, changed, cycle) => {
      if (changed & (1 << D.deadMan)) deadMan.toggled(cycle);
      if (changed & level & (1 << D.latch)) registers.latch(cycle);
    });
    deadMan.onChange = (alive, cycle) => registers.enable(alive, cycle);
    registers.onChange = (cycle) => {
      selector.select(registers.register2, cycle);
      this.onOutputs(cycle);
    };
    selector.onLevel = (high, cycle) => chip.ports.b.drive(B.capture, high, cycle);
  }

  private portBChanged(level: number, changed: number, cycle: number): void {
    if (changed & (1 << B.steering)) this.onServo(0, (level & (1 << B.steering)) !== 0, cycle);
    if (changed & (1 << B.throttle)) this.onServo(1, (level & (1 << B.throttle)) !== 0, cycle);
    if (changed & level & (1 << B.clock) && !this.chip.spi.enabled) {
      this.registers.shiftBit((level & (1 << B.data)) !== 0);
    }
  }

  /** Servo lines, latch, clock, data, dead-man and receiver inputs have pull-downs; the stop line is closed. */
  private pullDown(): void {
    const { b, d } = this.chip.ports;
    for (const bit of [B.capture, B.steering, B.throttle, B.data, B.stop, B.clock]) b.drive(bit, false, 0);
    for (const bit of [D.receiver1, D.receiver2, D.latch, D.deadMan]) d.drive(bit, false, 0);
  }
}
