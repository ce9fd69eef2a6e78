// SPDX-License-Identifier: MIT
// The block of eight scans as the sample store takes it: the same fields as the wire's scanBlock, so that a
// decoded message fits as it is and a stored record can be played back without a wire.

export interface ScanBlock {
  readonly scan: number;
  readonly tick: number;
  readonly fast: readonly number[];
  readonly slow: number;
  readonly slowFirst: number;
  readonly state: number;
  readonly trip: number;
  readonly outputs: number;
  readonly steering: number;
  readonly throttle: number;
  readonly edgesB: number;
  readonly edgesC: number;
  readonly badHall: number;
  readonly edgesA: number;
  readonly lastEdge: number;
  /** Eight scans of five values: the sums of two for a b c d, then the slow one. */
  readonly samples: ArrayLike<number>;
  /** Distances between captured edges, oldest first; the last one ends at lastEdge. */
  readonly edges: ArrayLike<number>;
}
export const scansPerBlock = 8;
export const valuesPerScan = 5;
export const conversionsPerScan = 9;
/** Bits of `outputs` that analysis asks for (codes.tsv, group outputBit). */
export const outputBits = {
  loads: 0b111,
  feedLimited: 1 << 3,
  feedFull: 1 << 4,
  throttlePulses: 1 << 9,
} as const;
