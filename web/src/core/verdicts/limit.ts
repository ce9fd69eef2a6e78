// SPDX-License-Identifier: MIT
// A limit is data: how much, of what kind, from where. It never stands without its source.
export type LimitKind = 'rating' | 'baseline' | 'common practice' | 'published';
export interface Limit {
  readonly min?: number;
  readonly max?: number;
  readonly unit: string;
  readonly kind: LimitKind;
  /** For people: "label of the motor, at 7.4 V", "common practice, no source". */
  readonly source: string;
  /** Beyond this the verdict stays Pass, with a note to watch it. */
  readonly warnMin?: number;
  readonly warnMax?: number;
}
export type VerdictWord = 'pass' | 'fail' | 'undecided' | 'not measured';
/** A finding held against its limit. A finding without a limit informs and has verdict 'pass' only as information. */
export interface Judged {
  readonly id: string;
  readonly limit?: Limit;
  readonly verdict: VerdictWord;
  /** For 'undecided': what would settle it, in numbers. For a watch level: the note. */
  readonly note?: string;
}
