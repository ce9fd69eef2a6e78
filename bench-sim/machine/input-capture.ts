// SPDX-License-Identifier: MIT
// The input capture unit of timer 1 at pin ICP1: synchroniser, edge detector, noise canceller.
// It knows levels with their cycle, not where they come from.
import type { ChipBus, ChipPart } from './chip-bus.ts';
import type { CompareTimer } from './compare-timer.ts';
import { TCCR1A, vectors } from './registers.ts';

export const ICF = 0x20;
const TCCR1B = TCCR1A + 1;
const CANCELLER = 0x80;
const RISING = 0x40;
/** Two flip-flops and the edge detector: 2.5 to 3.5 cycles on the chip (data sheet), 3 here. */
export const SYNCHRONISER_CYCLES = 3;
/** Four equal samples in the noise canceller. */
export const CANCELLER_CYCLES = 4;

export class InputCapture implements ChipPart {
  captured = 0;
  private level = false;
  private coming = false;
  private readonly slot: number;

  constructor(
    private readonly bus: ChipBus,
    private readonly timer: CompareTimer,
  ) {
    this.slot = bus.queue.slot((due) => this.settled(due));
    timer.serve(ICF, vectors.timer1Capture);
  }

  /** The level at ICP1 changed. */
  pinChanged(high: boolean, cycle: number): void {
    const cancelling = (this.bus.data[TCCR1B] & CANCELLER) !== 0;
    const due = this.bus.queue.dueOf(this.slot);
    if (due < Number.POSITIVE_INFINITY) {
      this.bus.queue.clear(this.slot);
      if (!cancelling || cycle >= due) this.settled(due);
    }
    this.coming = high;
    if (high === this.level) return;
    this.bus.queue.set(this.slot, cycle + SYNCHRONISER_CYCLES + (cancelling ? CANCELLER_CYCLES : 0));
  }

  reset(): void {
    this.captured = 0;
    this.bus.queue.clear(this.slot);
  }

  private settled(due: number): void {
    this.level = this.coming;
    const rising = (this.bus.data[TCCR1B] & RISING) !== 0;
    if (this.level !== rising) return;
    this.captured = this.timer.clock.count(due);
    this.timer.raise(ICF, due);
  }
}
