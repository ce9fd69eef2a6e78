// SPDX-License-Identifier: MIT
// The selector in front of the capture pin: Hall line A, receiver 1, receiver 2 or nothing (low).

export class CaptureSelector {
  onLevel: (high: boolean, cycle: number) => void = () => undefined;
  private choice = 0;
  private readonly levels = [false, false, false, false];
  private shown = false;

  /** 0 Hall A, 1 receiver 1, 2 receiver 2, 3 nothing. */
  select(choice: number, cycle: number): void {
    this.choice = choice & 3;
    this.settle(cycle);
  }

  drive(source: 0 | 1 | 2, high: boolean, cycle: number): void {
    this.levels[source] = high;
    this.settle(cycle);
  }

  private settle(cycle: number): void {
    const high = this.levels[this.choice];
    if (high === this.shown) return;
    this.shown = high;
    this.onLevel(high, cycle);
  }
}
