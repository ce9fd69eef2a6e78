// SPDX-License-Identifier: MIT
// Pulse widths of the two servo lines as they are at the pins: the last complete one, and none after 50 ms
// without a rise. Times are processor cycles; it does not know what the pulses move.

const SILENCE_S = 0.05;

export class ServoPulses {
  /** Cycles of the last complete pulse of steering and throttle. */
  readonly widths: [number, number] = [0, 0];
  private readonly roseAt: [number, number] = [Number.NaN, Number.NaN];
  private readonly fellAt: [number, number] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY];
  private readonly silenceCycles: number;

  constructor(private readonly trueHz: number) {
    this.silenceCycles = SILENCE_S * trueHz;
  }

  edge(line: 0 | 1, high: boolean, cycle: number): void {
    if (high) {
      this.roseAt[line] = cycle;
      return;
    }
    this.widths[line] = cycle - this.roseAt[line];
    this.fellAt[line] = cycle;
  }

  /** Seconds of true time, or null while no pulse ended for 50 ms. */
  widthS(line: 0 | 1, cycle: number): number | null {
    const silent = cycle - this.fellAt[line] > this.silenceCycles;
    return silent ? null : this.widths[line] / this.trueHz;
  }
}
