// SPDX-License-Identifier: MIT
// What the taps showed in the last seconds, tap by tap, for whoever looks whether a value stands still.
import { lookBackMs, steadyReading, type SeenValue, type SteadyReading } from './steady-reading.ts';

export class SeenTaps {
  #seen = $state.raw<ReadonlyMap<string, readonly SeenValue[]>>(new Map());

  /** Values as the rig tells them; null is none. */
  add(values: readonly { readonly tap: string; readonly value: number | null }[], atMs: number): void {
    const seen = new Map(this.#seen);
    for (const { tap, value } of values) {
      const before = (seen.get(tap) ?? []).filter((each) => atMs - each.atMs < lookBackMs);
      if (value !== null) seen.set(tap, [...before, { atMs, value }]);
    }
    this.#seen = seen;
  }
  reading(tap: string, range: { readonly low: number; readonly high: number }, nowMs: number): SteadyReading {
    return steadyReading(this.#seen.get(tap) ?? [], range, nowMs);
  }
}
