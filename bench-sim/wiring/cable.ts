// SPDX-License-Identifier: MIT
// The cable from the rig to the computer. Healthy it passes every byte; noisy it has seeded bursts in which
// bytes are dropped or garbled. It knows bytes and rig time, not frames.
import type { SeededRandom } from '../seeded-random.ts';

/** Bursts a second at severity 1, and their longest length in bytes (2 ms at 500 kbaud). */
const BURSTS_PER_S = 4;
const LONGEST_BYTES = 100;

export class Cable {
  private nextBurst: number;
  private damaged = 0;
  private readonly meanGapCycles: number;

  constructor(
    severity: number,
    clockHz: number,
    private readonly random: SeededRandom,
    private readonly deliver: (byte: number, cycle: number) => void,
  ) {
    this.meanGapCycles = severity > 0 ? clockHz / (BURSTS_PER_S * severity) : Number.POSITIVE_INFINITY;
    this.nextBurst = this.gapFrom(0);
  }

  pass(byte: number, cycle: number): void {
    if (cycle >= this.nextBurst) this.beginBurst(cycle);
    if (this.damaged === 0) this.deliver(byte, cycle);
    else this.damage(byte, cycle);
  }

  private beginBurst(cycle: number): void {
    this.damaged = 1 + Math.floor(this.random.unit() * LONGEST_BYTES);
    this.nextBurst = this.gapFrom(cycle);
  }

  private damage(byte: number, cycle: number): void {
    this.damaged--;
    if (this.random.unit() < 0.3) return;
    this.deliver((byte ^ (1 << (this.random.uint32() & 7))) & 0xff, cycle);
  }

  /** Bursts come at random: exponential distances. */
  private gapFrom(cycle: number): number {
    if (this.meanGapCycles === Number.POSITIVE_INFINITY) return this.meanGapCycles;
    return cycle - this.meanGapCycles * Math.log(1 - this.random.unit());
  }
}
