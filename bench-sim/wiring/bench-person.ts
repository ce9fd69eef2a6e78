// SPDX-License-Identifier: MIT
// The person at the virtual bench: sees the rig's light and presses the stop once; in the fault case the stop
// line opens by itself some time after the first drive. It knows the light and the stop line only.
import type { EventQueue } from '../machine/event-queue.ts';

const NOTICES_S = 0.3;
const PRESSES_S = 0.2;
const LINE_BREAKS_S = 2;

export class BenchPerson {
  private readonly pressSlot: number;
  private readonly releaseSlot: number;
  private readonly breakSlot: number;
  private broken = false;
  private driven = false;
  private pressed = false;

  constructor(
    private readonly queue: EventQueue,
    private readonly clockHz: number,
    private readonly lineBreaks: boolean,
    private readonly setStop: (open: boolean, cycle: number) => void,
  ) {
    this.pressSlot = queue.slot((due) => this.press(due));
    this.releaseSlot = queue.slot((due) => this.press(due, false));
    this.breakSlot = queue.slot((due) => this.breakLine(due));
  }

  lightChanged(on: boolean, cycle: number): void {
    if (on) this.queue.set(this.pressSlot, cycle + Math.round(NOTICES_S * this.clockHz));
    else this.queue.clear(this.pressSlot);
  }

  /** The first throttle or steering that left its rest in this session. */
  drove(cycle: number): void {
    if (this.driven || !this.lineBreaks) return;
    this.driven = true;
    this.queue.set(this.breakSlot, cycle + Math.round(LINE_BREAKS_S * this.clockHz));
  }

  /** A hand on the stop button, besides the one that the light asks for. */
  hold(open: boolean, cycle: number): void {
    this.pressed = open;
    this.setStop(open || this.broken, cycle);
  }

  private press(due: number, down = true): void {
    this.hold(down, due);
    if (down) this.queue.set(this.releaseSlot, due + Math.round(PRESSES_S * this.clockHz));
  }

  private breakLine(due: number): void {
    this.broken = true;
    this.setStop(this.broken || this.pressed, due);
  }
}
