// SPDX-License-Identifier: MIT
// The way to a virtual rig in the same program: a ByteLink, and the Clock that the host must use with it, both
// on the rig's true time. Between slices every promise settles, so that a run repeats byte for byte.
import type { ByteLink } from '#session/byte-link';
import type { Clock } from '#session/clock';
import { RigError } from '#session/rig-error';
import { asFastAsPossible, type Pace } from './rig-pace.ts';
import { RigPump } from './rig-pump.ts';
import { RigTimers } from './rig-timers.ts';
import type { VirtualRig } from './virtual-rig.ts';

export class VirtualLink implements ByteLink {
  readonly clock: Clock;
  private readonly timers: RigTimers;
  private readonly pump: RigPump;
  private state: 'closed' | 'open' | 'lost' = 'closed';
  private receive: (bytes: Uint8Array) => void = () => undefined;
  private lost: (cause: unknown) => void = () => undefined;

  constructor(
    readonly rig: VirtualRig,
    pace: Pace = asFastAsPossible,
  ) {
    this.timers = new RigTimers(
      () => rig.nowS * 1e3,
      () => this.pump.start(),
    );
    this.clock = this.timers;
    this.pump = new RigPump(rig, pace, {
      bytes: (chunk) => {
        if (this.state === 'open') this.receive(chunk);
      },
      sliced: (nowMs) => this.timers.fire(nowMs),
      nextStopMs: () => this.timers.nextMs(),
      goesOn: () => this.state === 'open' || this.timers.waiting,
      failed: (cause) => this.lose(cause),
    });
  }

  open(): Promise<void> {
    this.rig.reset();
    this.state = 'open';
    this.pump.start();
    return Promise.resolve();
  }

  close(): Promise<void> {
    this.state = 'closed';
    return Promise.resolve();
  }

  send(bytes: Uint8Array): Promise<void> {
    if (this.state !== 'open') return Promise.reject(new RigError('linkLost'));
    this.rig.send(bytes);
    return Promise.resolve();
  }

  onBytes(receive: (bytes: Uint8Array) => void): void {
    this.receive = receive;
  }

  onLost(listener: (cause: unknown) => void): void {
    this.lost = listener;
  }

  /** The cable is pulled: the rig runs on, nobody hears it. */
  unplug(): void {
    this.lose(new RigError('linkLost'));
  }

  private lose(cause: unknown): void {
    if (this.state !== 'open') return;
    this.state = 'lost';
    this.lost(cause);
  }
}
