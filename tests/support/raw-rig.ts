// SPDX-License-Identifier: MIT
// The compiled firmware on the virtual rig, spoken to in bytes: what is sent is put on the line as it is, what
// comes back is kept frame by frame, uninterpreted. It knows no session.
import { readFileSync } from 'node:fs';
import { FrameDecoder } from '#protocol/frame-decoder';
import { createVirtualRig, type VirtualRig } from '#sim/virtual-rig';
import { hexOf } from '../../firmware-protocol/vectors/vector-rows.ts';
import { hexFile } from './bench-in-process.ts';
import { SteadyPlant } from './steady-plant.ts';

const bootMs = 150;
const hex = readFileSync(hexFile, 'utf8');

export class RawRig {
  readonly rig: VirtualRig;
  /** Payloads as they came, hex. */
  readonly payloads: string[] = [];
  /** The bytes of each frame with its zero, hex. */
  readonly frames: string[] = [];
  faults = 0;
  private readonly decoder = new FrameDecoder();
  private bytes: number[] = [];

  /** A rig on a bench where nothing changes but Hall line A, at an even distance, a moment after power on. */
  constructor(seed = 1, edgeEveryS = 2e-3) {
    this.rig = createVirtualRig({ hex, plant: new SteadyPlant({}, edgeEveryS), seed });
    this.rig.onByte((byte) => this.take(byte));
    this.rig.runForMs(bootMs);
  }
  /** Puts bytes on the line, waits until the rig must have answered, gives the payloads that came for it. */
  ask(bytes: Uint8Array, waitMs = 20): string[] {
    const from = this.payloads.length;
    this.rig.send(bytes);
    while (this.rig.backlog > 0) this.rig.runForMs(1);
    this.rig.runForMs(waitMs);
    return this.payloads.slice(from);
  }
  private take(byte: number): void {
    this.bytes.push(byte);
    if (byte === 0) {
      this.frames.push(hexOf(Uint8Array.from(this.bytes)));
      this.bytes = [];
    }
    for (const result of this.decoder.push(Uint8Array.of(byte))) {
      if (result.kind === 'frame') this.payloads.push(hexOf(result.payload));
      else this.faults++;
    }
  }
}
