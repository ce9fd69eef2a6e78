// SPDX-License-Identifier: MIT
// From a quantity to a finding: interval, budget, evidence. It knows nothing of how the quantity was made.
import { halfWidth } from './coverage-interval.ts';
import type { EvidenceStretch, Finding, Measured, NotMeasured } from './measurement.ts';
import { budgetOf, standardU, type Quantity } from './quantity.ts';
import { NotMeasurable } from './tap-reading.ts';

export interface ResultName {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly level?: string;
}
interface Told {
  readonly formula: string;
  readonly evidence: readonly EvidenceStretch[];
  readonly notes?: readonly string[];
  readonly condition?: string;
}
export function measured(
  name: ResultName,
  quantity: Quantity,
  { formula, evidence, notes = [], condition }: Told,
): Measured {
  const { value } = quantity;
  const budget = budgetOf(quantity);
  const half = halfWidth(budget);
  const interval = [value - half, value + half] as const;
  return {
    measured: true,
    ...name,
    ...(condition !== undefined && { condition }),
    value,
    u: standardU(quantity),
    interval,
    budget,
    evidence,
    formula,
    notes,
  };
}
export const notMeasured = (name: ResultName, reason: string): NotMeasured => ({
  measured: false,
  ...name,
  reason,
});

/** Runs one analysis; a NotMeasurable inside becomes the reason of all its results. Other errors pass. */
export function guarded(names: readonly ResultName[], analyse: () => readonly Finding[]): readonly Finding[] {
  try {
    return analyse();
  } catch (error) {
    if (!(error instanceof NotMeasurable)) throw error;
    return names.map((name) => notMeasured(name, error.message));
  }
}
