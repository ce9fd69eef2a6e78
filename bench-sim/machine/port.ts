// SPDX-License-Identifier: MIT
// One 8-bit port: direction, output latch, pull-ups, override by compare outputs, levels from outside, and who
// listens to pin changes with their cycle. It does not know interrupts or what is soldered to the pins.
import type { ChipBus, ChipPart } from './chip-bus.ts';

/** `level` and `changed` are 8-bit masks of the pins; `cycle` is when it happened. */
export type PinListener = (level: number, changed: number, cycle: number) => void;

export class Port implements ChipPart {
  /** Levels at the pins now. */
  level = 0;
  private direction = 0;
  private latch = 0;
  private overrideMask = 0;
  private overrideLevel = 0;
  private outsideMask = 0;
  private outsideLevel = 0;
  private readonly listeners: PinListener[] = [];

  constructor(
    private readonly bus: ChipBus,
    private readonly pinAddress: number,
  ) {
    const { writeHooks, data } = bus;
    writeHooks[pinAddress] = (value, _old, _address, mask) => this.writeLatch(this.latch ^ (value & mask));
    writeHooks[pinAddress + 1] = (value) => {
      this.direction = data[pinAddress + 1] = value;
      this.settle(bus.now());
      return true;
    };
    writeHooks[pinAddress + 2] = (value) => this.writeLatch(value);
  }

  listen(listener: PinListener): void {
    this.listeners.push(listener);
  }

  /** A level that the board puts on a pin; it counts only while the pin is an input. */
  drive(bit: number, high: boolean, cycle: number): void {
    const mask = 1 << bit;
    this.outsideMask |= mask;
    this.outsideLevel = high ? this.outsideLevel | mask : this.outsideLevel & ~mask;
    this.settle(cycle);
  }

  /** A compare output takes the pin (true, false) or lets it go (null). */
  override(bit: number, high: boolean | null, cycle: number): void {
    const mask = 1 << bit;
    this.overrideMask = high === null ? this.overrideMask & ~mask : this.overrideMask | mask;
    this.overrideLevel = high ? this.overrideLevel | mask : this.overrideLevel & ~mask;
    this.settle(cycle);
  }

  isOutput(bit: number): boolean {
    return (this.direction & (1 << bit)) !== 0;
  }

  reset(): void {
    this.direction = this.latch = this.overrideMask = this.overrideLevel = 0;
    this.settle(this.bus.now());
  }

  private writeLatch(value: number): boolean {
    this.latch = this.bus.data[this.pinAddress + 2] = value;
    this.settle(this.bus.now());
    return true;
  }

  private settle(cycle: number): void {
    const out = (this.latch & ~this.overrideMask) | (this.overrideLevel & this.overrideMask);
    const seen = (this.outsideLevel & this.outsideMask) | (this.latch & ~this.outsideMask);
    const level = ((out & this.direction) | (seen & ~this.direction)) & 0xff;
    this.bus.data[this.pinAddress] = level;
    const changed = level ^ this.level;
    if (changed === 0) return;
    this.level = level;
    for (const listener of this.listeners) listener(level, changed, cycle);
  }
}
