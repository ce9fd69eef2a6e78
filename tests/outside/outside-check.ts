// SPDX-License-Identifier: MIT
// One figure from outside and what the project's own code makes of it. The same rows are the tests
// (outside.test.ts) and the table (write-table.ts). It computes nothing of the project's.

export interface OutsideCase {
  readonly name: string;
  readonly expected: number;
  /** Runs the project's code; null when it says that it can't. */
  readonly got: () => number | null;
  /** Greatest accepted difference. */
  readonly within: number;
}
export interface OutsideCheck {
  readonly source: string;
  /** What of the project is run. */
  readonly code: string;
  readonly mark?: 'from memory' | 'computed';
  readonly cases: readonly OutsideCase[];
}
/** Decimal digits in which two figures agree; 15 at most, none for an answer that is missing. */
export function agreeingDigits(got: number | null, expected: number): number {
  if (got === null || !Number.isFinite(got)) return 0;
  if (got === expected) return 15;
  const relative = Math.abs(got - expected) / (Math.abs(expected) || 1);
  return Math.min(15, Math.max(0, -Math.log10(relative)));
}
/** Half a unit of the last digit printed. */
export const printed = (decimals: number): number => 0.5001 * 10 ** -decimals;
/** A share of the figure itself. */
export const share = (expected: number, part: number): number => Math.abs(expected) * part;
