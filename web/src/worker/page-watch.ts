// SPDX-License-Identifier: MIT
// Whether the page could stop a run: it ticks every 100 ms from its main thread, and a hidden page's timers are
// slowed, so it counts as unable. Beats go out only while this says so. It knows no rig.

/** For a rig with a motor on it. */
export const freshMs = 300;
/** For the virtual rig, which hurts nobody: a computer busy with other work is not yet a frozen page. */
export const virtualFreshMs = 2000;

export class PageWatch {
  hidden = false;
  private tickedMs = Number.NEGATIVE_INFINITY;

  /** `now`: the computer's clock, ms. */
  constructor(private readonly now: () => number) {}

  tick(): void {
    this.tickedMs = this.now();
  }
  alive(way: 'virtual' | 'serial'): boolean {
    const fresh = way === 'virtual' ? virtualFreshMs : freshMs;
    return !this.hidden && this.now() - this.tickedMs < fresh;
  }
}
