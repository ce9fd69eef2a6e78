// SPDX-License-Identifier: MIT
// A virtual rig served to somebody outside this program (a page's worker, a pseudo-terminal) at the pace of a
// wall clock, never far ahead of its host. It passes bytes and knows no frames.
import type { BeatWatch } from './beat-watch.ts';
import { notAhead, type Pace } from './rig-pace.ts';
import { RigPump } from './rig-pump.ts';
import type { VirtualRig } from './virtual-rig.ts';

/** The rig waits when the host is further behind: a busy computer must not look like a host fallen silent. */
const farthestAheadMs = 40;
/** How often the patience with a host is looked at while the rig waits. */
const lookEveryMs = 20;

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
    /** For a host that tells by its beats alone that it keeps up. */
    private readonly beats: BeatWatch | null = null,
  ) {
    const pump = new RigPump(
      rig,
      notAhead(
        pace,
        () => Math.min(this.heardMs + farthestAheadMs, beats?.limitMs() ?? Number.POSITIVE_INFINITY),
        () => this.nextNews(),
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
    this.beats?.restart();
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
    this.beats?.restart();
    this.news();
  }

  receive(bytes: Uint8Array): void {
    if (!this.heard) return;
    this.rig.send(bytes);
    this.beats?.hostSent(bytes, this.rig.nowS * 1e3);
    this.news();
  }

  person(act: string): number | undefined {
    return this.rig.person(act);
  }

  stop(): void {
    this.serving = false;
    this.closed();
  }

  private pass(chunk: Uint8Array): void {
    if (!this.heard) return;
    this.deliver(chunk);
    this.beats?.rigSent(chunk, this.rig.nowS * 1e3);
  }

  private nextNews(): Promise<void> {
    return new Promise((come) => {
      const look = this.beats && setTimeout(come, lookEveryMs);
      this.news = () => {
        if (look) clearTimeout(look);
        come();
      };
    });
  }
}
