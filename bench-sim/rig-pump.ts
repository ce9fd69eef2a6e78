// SPDX-License-Identifier: MIT
// Runs a virtual rig in short slices of its own time and hands over the bytes of each slice. Who listens can
// also ask for a stop of the slice at a given time. It knows no frames and no host.
import type { Pace } from './rig-pace.ts';
import type { VirtualRig } from './virtual-rig.ts';

const SLICE_MS = 2;

export interface PumpListener {
  /** Bytes that left the rig in the slice. */
  bytes(chunk: Uint8Array): void;
  /** After each slice; the rig's true time in ms. */
  sliced(nowMs: number): void;
  /** Latest end of the next slice, ms; Infinity for none. */
  nextStopMs(): number;
  /** False ends the pump. */
  goesOn(): boolean;
  failed(cause: unknown): void;
}

export class RigPump {
  private running = false;
  private buffer = new Uint8Array(1024);
  private filled = 0;

  constructor(
    private readonly rig: VirtualRig,
    private readonly pace: Pace,
    private readonly listener: PumpListener,
  ) {
    rig.onByte((byte) => this.keep(byte));
  }

  get nowMs(): number {
    return this.rig.nowS * 1e3;
  }

  /** Starts running unless it runs. */
  start(): void {
    if (this.running) return;
    this.running = true;
    void this.run();
  }

  private async run(): Promise<void> {
    try {
      for (;;) {
        await this.pace.before(Math.min(this.nowMs + SLICE_MS, this.listener.nextStopMs()));
        if (!this.listener.goesOn()) break;
        this.slice(Math.min(this.nowMs + SLICE_MS, this.listener.nextStopMs()));
      }
      this.running = false;
    } catch (cause) {
      this.running = false;
      this.listener.failed(cause);
    }
  }

  private slice(untilMs: number): void {
    this.rig.runUntilCycle(Math.ceil((untilMs / 1e3) * this.rig.trueHz));
    if (this.filled > 0) {
      const chunk = this.buffer.slice(0, this.filled);
      this.filled = 0;
      this.listener.bytes(chunk);
    }
    this.listener.sliced(this.nowMs);
  }

  private keep(byte: number): void {
    if (this.filled === this.buffer.length) {
      const larger = new Uint8Array(2 * this.filled);
      larger.set(this.buffer);
      this.buffer = larger;
    }
    this.buffer[this.filled++] = byte;
  }
}
