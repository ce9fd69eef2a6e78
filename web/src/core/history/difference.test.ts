// SPDX-License-Identifier: MIT
// The difference of two runs, worked by hand: root of the sum of squares (JCGM 100, 5.1.2), 1.96 for 95 % (normal
// tables), spread over d2 (NIST/SEMATECH e-Handbook 6.3.2.2); Student's t for 4 degrees of freedom 2.776 (tables).
import { describe, expect, it } from 'vitest';
import { differenceOf } from './difference.ts';
import { budgetLine, measuredAs } from './history-fixture.ts';
import type { HistoryPoint } from './part-history.ts';

const run = (value: number, budget: Parameters<typeof measuredAs>[1], rigSerial = '17'): HistoryPoint => ({
  runId: String(value),
  partName: 'Motor',
  at: '2026-11-01T18:00:00.000Z',
  rigSerial,
  finding: measuredAs(value, budget) as HistoryPoint['finding'],
});
const noise = (u: number, dof = Infinity) => budgetLine('noise of this run', u, { shape: 'student', dof });
const gain = budgetLine('gain of packCurrentNarrow', 0.2);

describe('the difference of two runs', () => {
  it('has 1.96 times the root of the sum of squares as its half interval', () => {
    const { by, half, clear } = differenceOf(run(2.31, [noise(0.03)]), run(2.66, [noise(0.04)]), []);
    expect(by).toBeCloseTo(-0.35, 12);
    expect(half).toBeCloseTo(1.96 * 0.05, 4);
    expect(clear).toBe(true);
  });
  it('leaves out a gain that both have from one rig, and counts it twice from two rigs', () => {
    const [a, b] = [run(2.3, [gain, noise(0.03)]), run(2.6, [gain, noise(0.04)])];
    expect(differenceOf(a, b, [])).toMatchObject({ clear: true, shared: [gain.source] });
    const other = differenceOf(a, { ...b, rigSerial: '18' }, []);
    expect(other.u).toBeCloseTo(Math.hypot(0.05, 0.2, 0.2), 12);
    expect(other.clear).toBe(false);
  });
  it('is wider with few degrees of freedom: one noise of 4 gives 2.776 u', () => {
    const { half } = differenceOf(run(2, [noise(0.05, 4)]), run(2, [noise(0)]), []);
    expect(half).toBeCloseTo(2.776 * 0.05, 4);
  });
  it('counts scatter from run to run where it is more than the budgets say', () => {
    const history = [2.0, 2.4, 2.0, 2.4, 2.0, 2.4];
    const found = differenceOf(run(2.4, [noise(0.01)]), run(2.0, [noise(0.01)]), history);
    expect(found.u).toBeCloseTo((0.4 / 1.128) * Math.SQRT2, 6);
    expect(found).toMatchObject({ scatter: 'counts', clear: false });
  });
  it('says when too few runs tell of scatter, and when budgets hold it', () => {
    const pair = [run(2.4, [noise(0.1)]), run(2.38, [noise(0.1)])] as const;
    expect(differenceOf(...pair, [2.4, 2.38]).scatter).toBe('unknown');
    expect(differenceOf(...pair, [2.4, 2.38, 2.41, 2.39, 2.4]).scatter).toBe('within budgets');
  });
  it('of a run with itself is nought and not clear', () => {
    const one = run(2.4, [gain, noise(0.1)]);
    expect(differenceOf(one, one, [])).toMatchObject({ by: 0, clear: false });
  });
});
