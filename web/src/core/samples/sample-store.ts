// SPDX-License-Identifier: MIT
// One run's samples as columns on one time axis, raw counts kept, scaled on reading. It knows scan blocks and
// the rig's description; it does not know links, screens or verdicts.

/** Values of one tap in SI over a stretch; times are the mean conversion time of each value. */
export interface Series {
  readonly timeS: Float64Array;
  readonly value: Float64Array;
  /** Values at either end of the converter's range, left out of `value`. */
  readonly clipped: number;
  /** Scans known to be lost inside the stretch. */
  readonly lost: number;
}
export interface SampleStore {
  /** Rig time of the newest scan, seconds since the run began. */
  readonly latestS: number;
  series(tap: string, fromS: number, toS: number): Series;
  /** The newest value of a tap, or null when it was never scanned. */
  latest(tap: string): { readonly value: number; readonly atS: number } | null;
  /** Times of the captured Hall A edges (both polarities alternate). */
  edges(fromS: number, toS: number): Float64Array;
  readonly gaps: readonly { readonly fromS: number; readonly toS: number }[];
  readonly marks: readonly { readonly atS: number; readonly label: string }[];
}
