// SPDX-License-Identifier: MIT
// Arithmetic of a prescaled up-counter without an event per tick: which count stands at a cycle, and at which
// cycle a later count is reached. It knows neither flags nor registers.

/** `top` is the count after which the counter returns to 0 (OCRA in CTC); `max` is all ones. */
export class TimerClock {
  top: number;
  /** Cycles a tick; 0 while stopped. */
  private divider = 0;
  private origin = 0;
  private baseCount = 0;
  private baseTick = 0;

  constructor(private readonly max: number) {
    this.top = max;
  }

  get running(): boolean {
    return this.divider !== 0;
  }

  count(cycle: number): number {
    if (this.divider === 0) return this.baseCount;
    return this.wrap(this.baseCount + this.tickAt(cycle) - this.baseTick);
  }

  /** Sets the count as of `cycle`. */
  load(count: number, cycle: number): void {
    this.baseCount = count;
    if (this.divider !== 0) this.baseTick = this.tickAt(cycle);
  }

  /** The prescaler runs freely, so a new divider keeps the prescaler's phase. */
  setDivider(divider: number, cycle: number): void {
    const count = this.count(cycle);
    this.divider = divider;
    this.load(count, cycle);
  }

  setTop(top: number, cycle: number): void {
    const count = this.count(cycle);
    this.top = top;
    this.load(count, cycle);
  }

  /** The prescaler starts anew (reset, or prescaler reset by the program). */
  restartPrescaler(cycle: number): void {
    const count = this.count(cycle);
    this.origin = cycle;
    this.load(count, cycle);
  }

  /** Cycle at which the counter leaves `value` (when a compare flag is set), or never. */
  cycleLeaving(value: number, cycle: number): number {
    if (this.divider === 0) return Number.POSITIVE_INFINITY;
    const count = this.count(cycle);
    if (value > this.top && (count <= this.top || count > value)) return Number.POSITIVE_INFINITY;
    const ahead = value >= count ? value - count : value - count + this.turnFrom(count);
    return this.origin + (this.tickAt(cycle) + ahead + 1) * this.divider;
  }

  private turnFrom(count: number): number {
    return (count <= this.top ? this.top : this.max) + 1;
  }

  private tickAt(cycle: number): number {
    return Math.floor((cycle - this.origin) / this.divider);
  }

  private wrap(raw: number): number {
    if (this.baseCount <= this.top) return raw <= this.top ? raw : raw % (this.top + 1);
    return raw <= this.max ? raw : (raw - this.max - 1) % (this.top + 1);
  }
}
