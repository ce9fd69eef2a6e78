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
/** What each block of eight scans says of the outputs, at the time of its first scan. */
export interface StatusSeries {
  readonly timeS: Float64Array;
  /** Bits, see group outputBit of the protocol. */
  readonly outputs: Uint16Array;
  /** Pulse width of each output, 0 while no pulses run. */
  readonly steeringUs: Float64Array;
  readonly throttleUs: Float64Array;
  /** Running counts since the run began: captured edges, edges of Hall B and C, invalid Hall states. */
  readonly edgesA: Float64Array;
  readonly edgesB: Float64Array;
  readonly edgesC: Float64Array;
  readonly badHall: Float64Array;
  /** Time of the last captured edge, NaN before the first. */
  readonly lastEdgeS: Float64Array;
}
/** The converter's supply over a stretch, from the reference input. */
export interface SupplyReading {
  readonly volts: number;
  /** Standard uncertainty of the readings' mean, without the reference's own tolerance. */
  readonly u: number;
  /** Readings behind it; 0 when the reference was never scanned and the nominal supply stands in. */
  readonly readings: number;
}
/** Host seconds per rig second, and how far that may be off (half-width of a rectangle, or 2 u of a fit). */
export interface ClockFit {
  readonly ratio: number;
  readonly halfWidth: number;
  readonly origin: 'descriptor' | 'fit';
}
export interface SampleStore {
  /** Rig time of the newest scan, seconds since the run began. */
  readonly latestS: number;
  series(tap: string, fromS: number, toS: number): Series;
  /** The newest value of a tap, or null when it was never scanned. */
  latest(tap: string): { readonly value: number; readonly atS: number } | null;
  /** Times of the captured Hall A edges (both polarities alternate). */
  edges(fromS: number, toS: number): Float64Array;
  status(fromS: number, toS: number): StatusSeries;
  supply(fromS: number, toS: number): SupplyReading;
  readonly clock: ClockFit;
  readonly gaps: readonly { readonly fromS: number; readonly toS: number }[];
  readonly marks: readonly { readonly atS: number; readonly label: string }[];
}
