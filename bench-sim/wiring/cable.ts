// SPDX-License-Identifier: MIT
// The cable from the rig to the computer. Healthy it passes every byte; noisy it has seeded bursts in which
// bytes are dropped or garbled, and only while `disturbed`: what disturbs it is the current of the car.
// It knows bytes and rig time, not frames.
import type { SeededRandom } from '../seeded-random.ts';

/** Bursts a second at severity 1, and their longest duration. */
const BURSTS_PER_S = 4;
const LONGEST_S = 2e-3;
const DROPPED_SHARE = 0.3;

export class Cable {
  disturbed = false;
  private burstStart: number;
  private burstEnd: number;
  private readonly meanGapCycles: number;

  constructor(
    severity: number,
    private readonly clockHz: number,
    private readonly random: SeededRandom,
    private readonly deliver: (byte: number, cycle: number) => void,
  ) {
    this.meanGapCycles = severity > 0 ? clockHz / (BURSTS_PER_S * severity) : Number.POSITIVE_INFINITY;
    this.burstStart = this.burstEnd = 0;
    this.planBurst();
  }

  pass(byte: number, cycle: number): void {
    while (cycle > this.burstEnd) this.planBurst();
    const hit = this.disturbed && cycle >= this.burstStart;
    if (!hit) this.deliver(byte, cycle);
    else if (this.random.unit() >= DROPPED_SHARE)
      this.deliver(byte ^ (1 << (this.random.uint32() & 7)), cycle);
  }

  /** Bursts come at random: exponential distances, even durations. */
  private planBurst(): void {
    if (this.meanGapCycles === Number.POSITIVE_INFINITY) {
      this.burstStart = this.burstEnd = Number.POSITIVE_INFINITY;
      return;
    }
    this.burstStart = this.burstEnd - this.meanGapCycles * Math.log(1 - this.random.unit());
    this.burstEnd = this.burstStart + this.random.unit() * LONGEST_S * this.clockHz;
  }
}
