// SPDX-License-Identifier: MIT
// What is said of one fault: its name, its words, the check that must notice it and what that check must say.

/** `tripped` is an event whose results are not measured; `pass`: not a fault of the part, and must not be called one. */
export type FaultVerdict = 'fail' | 'notMeasured' | 'tripped' | 'pass';

export interface FaultRow {
  readonly name: string;
  /** For a switch: a few words. */
  readonly title: string;
  /** What is wrong, in words of the trade. */
  readonly words: string;
  /** What severity 1 stands for; between 0 and 1 the change is proportional unless said otherwise. */
  readonly severity: string;
  /** The check that must notice it. */
  readonly check: string;
  /** What that check must say at severity 1. */
  readonly verdict: FaultVerdict;
  /** The result that must not pass; where left out, any. */
  readonly result?: string;
  /** Where it is made. */
  readonly room: 'plant' | 'wiring' | 'cable' | 'bench';
}
