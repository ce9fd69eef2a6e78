// SPDX-License-Identifier: MIT
// Timed events of the machine in processor cycles. Every part owns a fixed slot holding its next due cycle, so
// scheduling allocates nothing and only what comes next is ever looked at. It knows no part.

export type EventAction = (dueCycle: number) => void;
const MAX_SLOTS = 48;

export class EventQueue {
  /** No event is due before this cycle. May be early (a moved event), never late. */
  next = Number.POSITIVE_INFINITY;
  private readonly due = new Float64Array(MAX_SLOTS).fill(Number.POSITIVE_INFINITY);
  private readonly actions: EventAction[] = [];

  slot(action: EventAction): number {
    if (this.actions.length === MAX_SLOTS) throw new RangeError('The event queue has no slot left.');
    return this.actions.push(action) - 1;
  }

  set(slot: number, dueCycle: number): void {
    this.due[slot] = dueCycle;
    if (dueCycle < this.next) this.next = dueCycle;
  }

  clear(slot: number): void {
    this.due[slot] = Number.POSITIVE_INFINITY;
  }

  dueOf(slot: number): number {
    return this.due[slot];
  }

  /** Runs everything due up to `now`, earliest first, ties in the order the slots were made. */
  fire(now: number): void {
    for (;;) {
      const slot = this.earliest();
      const dueCycle = this.due[slot];
      if (!(dueCycle <= now)) {
        this.next = dueCycle;
        return;
      }
      this.due[slot] = Number.POSITIVE_INFINITY;
      this.actions[slot](dueCycle);
    }
  }

  private earliest(): number {
    const { due } = this;
    const count = this.actions.length;
    let best = 0;
    for (let i = 1; i < count; i++) if (due[i] < due[best]) best = i;
    return best;
  }
}
