// SPDX-License-Identifier: MIT
// A virtual rig served to somebody outside this program (a page's worker, a pseudo-terminal) at the pace of a
// wall clock. It passes bytes and knows no frames.
import { notAhead, type Pace } from './rig-pace.ts';
import { RigPump } from './rig-pump.ts';
import type { VirtualRig } from './virtual-rig.ts';

/** The rig waits when the host is further behind: a busy computer must not look like a host fallen silent. */
const farthestAheadMs = 40;

export class ServedRig {
  /** Rig time up to which the host has worked; endless for a host that does not say. */
  private heardMs = Number.POSITIVE_INFINITY;
  private news: () => void = () => undefined;
  private serving = true;
  /** Whether somebody has the line open; nobody hears what is sent to a closed one. */
  private heard = false;

  constructor(
    readonly rig: VirtualRig,
    pace: Pace,
    private readonly deliver: (bytes: Uint8Array) => void,
    failed: (cause: unknown) => void,
    passed: (nowMs: number) => void = () => undefined,
  ) {
    const pump = new RigPump(
      rig,
      notAhead(
        pace,
        () => this.heardMs + farthestAheadMs,
        () => new Promise((come) => (this.news = come)),
      ),
      {
        bytes: (chunk) => this.pass(chunk),
        sliced: (nowMs) => {
          if (this.heard) passed(nowMs);
        },
        nextStopMs: () => Number.POSITIVE_INFINITY,
        goesOn: () => this.serving,
        failed,
      },
    );
    pump.start();
  }

  /** The line was opened: a board is reset by that. */
  opened(): void {
    this.rig.reset();
    this.heard = true;
  }

  /** The host keeps up to `nowMs`; from the first such word on the rig does not run away from it. */
  keepsUp(nowMs: number): void {
    this.heardMs = nowMs;
    this.news();
  }

  closed(): void {
    this.heard = false;
    this.heardMs = Number.POSITIVE_INFINITY;
    this.news();
  }

  receive(bytes: Uint8Array): void {
    if (this.heard) this.rig.send(bytes);
  }

  person(act: string): void {
    this.rig.person(act);
  }

  stop(): void {
    this.serving = false;
    this.closed();
  }

  private pass(chunk: Uint8Array): void {
    if (this.heard) this.deliver(chunk);
  }
}
