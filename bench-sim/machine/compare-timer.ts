// SPDX-License-Identifier: MIT
// One timer of the chip in normal or clear-on-compare mode: two compare units with their outputs, overflow,
// flags and interrupts. Only the next compare and the next overflow are scheduled. Pulse width modulation
// modes are not modelled and say so.
import type { ChipBus, ChipPart } from './chip-bus.ts';
import { MachineFault } from './machine-fault.ts';
import type { Port } from './port.ts';
import { TimerClock } from './timer-clock.ts';

export interface TimerPlan {
  readonly name: string;
  readonly max: number;
  /** Cycles a tick by clock select bits; null: external clock. */
  readonly dividers: readonly (number | null)[];
  readonly controlA: number;
  readonly flags: number;
  readonly mask: number;
  readonly vectorA: number;
  readonly vectorB: number;
  readonly vectorOverflow: number;
  /** Which waveform bits mean clear on compare with A; 0 is normal. */
  readonly clearMode: number;
  readonly outputs: { readonly port: Port; readonly bits: readonly [number, number] } | null;
}
export const TOV = 1;
export const OCFA = 2;
export const OCFB = 4;

export class CompareTimer implements ChipPart {
  readonly clock: TimerClock;
  /** Flags as in TIFR; the capture unit of timer 1 adds its own bit. */
  flags = 0;
  private readonly compare = [0, 0];
  private readonly latches = [false, false];
  private readonly slots: readonly [number, number, number];
  private modeBits = 0;
  private readonly extraVectors: { readonly flag: number; readonly vector: number }[] = [];

  constructor(
    private readonly bus: ChipBus,
    private readonly plan: TimerPlan,
  ) {
    this.clock = new TimerClock(plan.max);
    this.slots = [
      bus.queue.slot((due) => this.matched(0, due)),
      bus.queue.slot((due) => this.matched(1, due)),
      bus.queue.slot((due) => this.overflowed(due)),
    ];
    this.hookFlags();
    this.hookControl();
    this.serve(OCFA, plan.vectorA);
    this.serve(OCFB, plan.vectorB);
    this.serve(TOV, plan.vectorOverflow);
  }

  /** Ties a flag of this timer to a vector. */
  serve(flag: number, vector: number): void {
    this.extraVectors.push({ flag, vector });
    this.bus.interrupts.onEntry(vector, () => this.clearFlags(flag));
  }

  raise(flag: number, cycle: number): void {
    this.flags |= flag;
    this.updateInterrupts(cycle);
  }

  writeCount(value: number): void {
    const now = this.bus.now();
    this.clock.load(value, now);
    this.reschedule(now);
    // A write to the counter blocks a match on the next tick (data sheet, 16-bit timer, compare match blocking).
    this.compare.forEach((at, unit) => at === value && this.bus.queue.clear(this.slots[unit]));
  }

  readCompare(unit: 0 | 1): number {
    return this.compare[unit];
  }

  writeCompare(unit: 0 | 1, value: number): void {
    const now = this.bus.now();
    this.compare[unit] = value;
    if (unit === 0 && this.clears) this.clock.setTop(value, now);
    this.reschedule(now);
  }

  restartPrescaler(cycle: number): void {
    this.clock.restartPrescaler(cycle);
    this.reschedule(cycle);
  }

  reset(): void {
    const now = this.bus.now();
    this.flags = this.modeBits = 0;
    this.compare.fill(0);
    this.latches.fill(false);
    this.clock.setDivider(0, now);
    this.clock.setTop(this.plan.max, now);
    this.clock.load(0, now);
    this.clock.restartPrescaler(now);
    this.reschedule(now);
  }

  private get clears(): boolean {
    return this.plan.clearMode !== 0 && this.modeBits === this.plan.clearMode;
  }

  private hookFlags(): void {
    const { bus, plan } = this;
    bus.readHooks[plan.flags] = () => this.flags;
    bus.writeHooks[plan.flags] = (value, _old, _address, mask) => {
      this.clearFlags(value & mask);
      return true;
    };
    bus.writeHooks[plan.mask] = (value) => {
      bus.data[plan.mask] = value;
      this.updateInterrupts(bus.now());
      return true;
    };
  }

  private hookControl(): void {
    const { bus, plan } = this;
    for (const address of [plan.controlA, plan.controlA + 1]) {
      bus.writeHooks[address] = (value) => {
        bus.data[address] = value;
        this.controlChanged();
        return true;
      };
    }
    const force = plan.max > 0xff ? plan.controlA + 2 : plan.controlA + 1;
    const store = bus.writeHooks[force];
    bus.writeHooks[force] = (value, old, address, mask) => {
      store?.(value & 0x3f, old, address, mask);
      if (value & 0x80) this.actOnOutput(0, bus.now());
      if (value & 0x40) this.actOnOutput(1, bus.now());
      return true;
    };
  }

  private controlChanged(): void {
    const { bus, plan } = this;
    const now = bus.now();
    const a = bus.data[plan.controlA];
    const b = bus.data[plan.controlA + 1];
    const divider = plan.dividers[b & 7];
    if (divider === null) throw new MachineFault(`${plan.name}: an external clock is not modelled.`);
    this.modeBits = (a & 3) | ((b & 0x18) >> 1);
    if (this.modeBits !== 0 && !this.clears) {
      throw new MachineFault(
        `${plan.name}: waveform mode ${this.modeBits} is not modelled (normal and CTC are).`,
      );
    }
    this.clock.setDivider(divider, now);
    this.clock.setTop(this.clears ? this.compare[0] : plan.max, now);
    this.connectOutputs(a, now);
    this.reschedule(now);
  }

  private connectOutputs(a: number, cycle: number): void {
    const { outputs } = this.plan;
    if (outputs === null) return;
    for (let unit = 0; unit < 2; unit++) {
      const connected = ((a >> (6 - 2 * unit)) & 3) !== 0;
      outputs.port.override(outputs.bits[unit], connected ? this.latches[unit] : null, cycle);
    }
  }

  private actOnOutput(unit: number, cycle: number): void {
    const action = (this.bus.data[this.plan.controlA] >> (6 - 2 * unit)) & 3;
    if (action === 0) return;
    this.latches[unit] = action === 3 || (action === 1 && !this.latches[unit]);
    this.connectOutputs(this.bus.data[this.plan.controlA], cycle);
  }

  private matched(unit: 0 | 1, due: number): void {
    this.actOnOutput(unit, due);
    this.raise(unit === 0 ? OCFA : OCFB, due);
    this.bus.queue.set(this.slots[unit], this.clock.cycleLeaving(this.compare[unit], due));
  }

  private overflowed(due: number): void {
    this.raise(TOV, due);
    this.bus.queue.set(this.slots[2], this.clock.cycleLeaving(this.plan.max, due));
  }

  private reschedule(now: number): void {
    const { queue } = this.bus;
    queue.set(this.slots[0], this.clock.cycleLeaving(this.compare[0], now));
    queue.set(this.slots[1], this.clock.cycleLeaving(this.compare[1], now));
    queue.set(this.slots[2], this.clock.cycleLeaving(this.plan.max, now));
  }

  private clearFlags(bits: number): void {
    this.flags &= ~bits;
    this.updateInterrupts(this.bus.now());
  }

  private updateInterrupts(cycle: number): void {
    const active = this.flags & this.bus.data[this.plan.mask];
    for (const { flag, vector } of this.extraVectors) {
      this.bus.interrupts.want(vector, (active & flag) !== 0, cycle);
    }
  }
}
