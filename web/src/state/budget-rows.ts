// SPDX-License-Identifier: MIT
// Lines of a budget as a table shows them: widest first, each with its share of the variance. Pure.
import type { BudgetLine } from '#core/measurements/measurement';
import { tapsNamed } from '#core/samples/tap-titles';
import type { ShownUnit } from '#core/units/shown-unit';
import { twoDigits } from './figures.ts';

export interface BudgetRow {
  readonly source: string;
  readonly origin: string;
  /** Share of the variance, 0 to 100. */
  readonly share: number;
  readonly u: string;
}
export interface PartedRows {
  readonly shown: readonly BudgetRow[];
  /** Below a hundredth of the variance each; none where they would be one or two. */
  readonly small: readonly BudgetRow[];
}
/** The lines that matter, and those that are there for completeness. */
export function parted(rows: readonly BudgetRow[]): PartedRows {
  const small = rows.filter(({ share }) => share < 1);
  if (small.length < 3) return { shown: rows, small: [] };
  return { shown: rows.filter(({ share }) => share >= 1), small };
}
/** `shown` from the budget's unit to the shown one. */
export function budgetRows(lines: readonly BudgetLine[], shown: Pick<ShownUnit, 'difference'>): BudgetRow[] {
  const total = lines.reduce((sum, line) => sum + line.u * line.u, 0) || 1;
  return lines
    .toSorted((a, b) => b.u - a.u)
    .map((line) => ({
      source: tapsNamed(line.source),
      origin: line.origin,
      share: Math.round((100 * line.u * line.u) / total),
      u: twoDigits(shown.difference(line.u)),
    }));
}
