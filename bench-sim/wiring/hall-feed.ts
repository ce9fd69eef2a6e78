// SPDX-License-Identifier: MIT
// Edges of Hall lines and receiver that the plant has found ahead of time, given to the board at their exact cycle.
// It knows neither rotor nor radio nor capture.
import type { EventQueue } from '../machine/event-queue.ts';
import type { HallEdge } from './plant.ts';

const ROOM = 64;

export class HallFeed {
  private readonly cycles = new Float64Array(ROOM);
  private readonly lines = new Uint8Array(ROOM);
  private readonly levels = new Uint8Array(ROOM);
  private count = 0;
  private readonly slot: number;

  constructor(
    private readonly queue: EventQueue,
    private readonly trueHz: number,
    private readonly setLine: (line: HallEdge['line'], high: boolean, cycle: number) => void,
  ) {
    this.slot = queue.slot((due) => this.give(due));
  }

  /** Keeps an edge in its place by time. Beyond 64 in one chunk (2.6 M edges/s) it is no motor: dropped. */
  take(edge: HallEdge): void {
    if (this.count === ROOM) return;
    const cycle = Math.ceil(edge.timeS * this.trueHz);
    let at = this.count++;
    while (at > 0 && this.cycles[at - 1] > cycle) this.move(at - 1, at--);
    this.cycles[at] = cycle;
    this.lines[at] = edge.line;
    this.levels[at] = edge.level ? 1 : 0;
    this.queue.set(this.slot, this.cycles[0]);
  }

  private give(due: number): void {
    let given = 0;
    while (given < this.count && this.cycles[given] <= due) {
      this.setLine(this.lines[given] as HallEdge['line'], this.levels[given] === 1, this.cycles[given]);
      given++;
    }
    for (let i = given; i < this.count; i++) this.move(i, i - given);
    this.count -= given;
    if (this.count > 0) this.queue.set(this.slot, this.cycles[0]);
  }

  private move(from: number, to: number): void {
    this.cycles[to] = this.cycles[from];
    this.lines[to] = this.lines[from];
    this.levels[to] = this.levels[from];
  }
}
