// SPDX-License-Identifier: MIT
// The dead-man: a charge pump fed by the toggling of D7. A few edges charge it, a pause lets it run down, and
// with it the outputs go. It does not know what it enables.
import type { EventQueue } from './event-queue.ts';

/** Edges it takes to charge the pump. */
const CHARGING_EDGES = 4;

export class DeadMan {
  alive = false;
  onChange: (alive: boolean, cycle: number) => void = () => undefined;
  private edges = 0;
  private readonly slot: number;

  constructor(
    private readonly queue: EventQueue,
    private readonly holdCycles: number,
  ) {
    this.slot = queue.slot((due) => this.ranDown(due));
  }

  /** An edge at D7. */
  toggled(cycle: number): void {
    this.queue.set(this.slot, cycle + this.holdCycles);
    if (this.alive || ++this.edges < CHARGING_EDGES) return;
    this.alive = true;
    this.onChange(true, cycle);
  }

  private ranDown(due: number): void {
    this.edges = 0;
    if (!this.alive) return;
    this.alive = false;
    this.onChange(false, due);
  }
}
