// SPDX-License-Identifier: MIT
// For tests: findings and points of a part's history, made from values.
import type { BudgetLine, Measured } from '../measurements/measurement.ts';
import type { HistoryPoint, RunFindings } from './part-history.ts';

export const budgetLine = (source: string, u: number, change: Partial<BudgetLine> = {}): BudgetLine => ({
  source,
  u,
  shape: 'rectangular',
  dof: Number.POSITIVE_INFINITY,
  origin: 'rig description',
  ...change,
});
export const measuredAs = (value: number, budget: readonly BudgetLine[], unit = 'A'): Measured => ({
  measured: true,
  id: 'no-load-current',
  title: 'No-load current',
  value,
  unit,
  u: Math.hypot(...budget.map(({ u }) => u)),
  interval: [value - 1, value + 1],
  budget,
  evidence: [],
  formula: '',
  notes: [],
});
export const pointOf = (value: number, i: number, change: Partial<HistoryPoint> = {}): HistoryPoint => ({
  runId: `run-${i}`,
  partName: 'Gravel Wren 13.5',
  at: `2026-11-${String(i + 1).padStart(2, '0')}T19:00:00Z`,
  rigSerial: '17',
  finding: measuredAs(value, [budgetLine('gain of packCurrentNarrow', 0.01 * value)]),
  ...change,
});
export const pointsOf = (...values: readonly number[]): HistoryPoint[] =>
  values.map((value, i) => pointOf(value, i));
export const runOf = (value: number, i: number, change: Partial<RunFindings> = {}): RunFindings => ({
  runId: `run-${i}`,
  checkId: 'motor-no-load',
  startedAt: pointOf(value, i).at,
  partName: 'Gravel Wren 13.5',
  rigSerial: '17',
  findings: [pointOf(value, i).finding],
  verdicts: { 'no-load-current': 'pass' },
  ...change,
});
