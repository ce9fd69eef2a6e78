// SPDX-License-Identifier: MIT
// Makes one rising count of the rig's 32-bit ticks, which wrap after 35.8 minutes. It knows no seconds.

export class TickCount {
  private last = 0;
  private high = 0;
  private started = false;

  /** Ticks may come a little out of order: a step back of less than half a turn is a step back. */
  unwrap(tick: number): number {
    if (!this.started) {
      this.started = true;
      this.last = tick;
      return tick;
    }
    const step = (tick - this.last) | 0;
    const at = this.high + this.last + step;
    if (step > 0) {
      this.high = at - tick;
      this.last = tick;
    }
    return at;
  }
}
