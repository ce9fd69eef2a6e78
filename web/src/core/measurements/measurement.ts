// SPDX-License-Identifier: MIT
// What a check finds: a value with its budget and interval, or the reason why there is none.
// Vocabulary after JCGM 100:2008 (standard uncertainty u, contributions) and JCGM 101 (95 % interval).

/** One line of an uncertainty budget. `u` is the standard uncertainty it brings, in the unit of the result. */
export interface BudgetLine {
  readonly source: string;
  readonly u: number;
  readonly shape: 'normal' | 'rectangular' | 'student';
  /** Degrees of freedom; Infinity for a type B line. */
  readonly dof: number;
  /** Where the figure comes from: descriptor, calibration, statistics of this run, rule of thumb. */
  readonly origin: string;
}
/** The stretch of record a number came from; seconds of rig time since the run began. */
export interface EvidenceStretch {
  readonly fromS: number;
  readonly toS: number;
  readonly taps: readonly string[];
}
export interface Measured {
  readonly measured: true;
  readonly id: string;
  readonly title: string;
  /** What it holds at, where that hangs on the car and not on the check: "7.4 V". */
  readonly condition?: string;
  readonly value: number;
  readonly unit: string;
  /** The tap whose trace shows this very quantity, told at no other condition: value and limit belong on its axis. */
  readonly level?: string;
  readonly u: number;
  /** 95 % coverage interval. */
  readonly interval: readonly [number, number];
  readonly budget: readonly BudgetLine[];
  readonly evidence: readonly EvidenceStretch[];
  /** How the number was made, one plain sentence with the formula in words. */
  readonly formula: string;
  readonly notes: readonly string[];
}
export interface NotMeasured {
  readonly measured: false;
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly level?: string;
  /** A sentence: what was seen, then what to do. */
  readonly reason: string;
}
export type Finding = Measured | NotMeasured;
