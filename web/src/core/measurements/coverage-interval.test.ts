// SPDX-License-Identifier: MIT
// JCGM 101:2008, 9.2 (sum of four inputs): 95 % intervals printed there or in closed form.
import { describe, expect, it } from 'vitest';
import { chanceBeyond, halfWidth } from './coverage-interval.ts';

const endless = Number.POSITIVE_INFINITY;
const normal = (u: number) => ({ u, shape: 'normal', dof: endless }) as const;
const box = (u: number) => ({ u, shape: 'rectangular', dof: endless }) as const;
const student = (u: number, dof: number) => ({ u, shape: 'student', dof }) as const;

describe('halfWidth', () => {
  it('is 3.92 for four normal inputs', () =>
    expect(halfWidth([1, 1, 1, 1].map(normal))).toBeCloseTo(3.92, 2));
  it('is 3.88 for four rectangular inputs: 2 sqrt 3 (2 - 0.6^(1/4))', () =>
    expect(halfWidth([1, 1, 1, 1].map(box))).toBeCloseTo(3.8794067, 2));
  it('is 17.0 where one rectangle of ten dominates, not the 19.9 of k = 1.96 (9.2.4)', () => {
    const half = halfWidth([box(1), box(1), box(1), box(10)]);
    expect(Math.abs(half - 17.0158)).toBeLessThan(0.03);
  });
  it('never covers everything for one rectangle: 0.95 of its half-width', () =>
    expect(halfWidth([box(1)])).toBeCloseTo(0.95 * Math.sqrt(3), 2));
  it.each([
    [2, 4.3027],
    [4, 2.7764],
    [9, 2.2622],
    [30, 2.0423],
  ])('is the t quantile for a single mean with %i degrees of freedom', (dof, quantile) =>
    expect(Math.abs(halfWidth([student(1, dof)]) / quantile - 1)).toBeLessThan(0.01),
  );
  it('scales with its lines and is 0 for none', () => {
    const lines = [box(0.02), student(0.01, 9), normal(0.005)];
    const larger = lines.map((line) => ({ ...line, u: line.u * 50 }));
    expect(halfWidth(larger) / halfWidth(lines)).toBeCloseTo(50, 6);
    expect(halfWidth([])).toBe(0);
  });
});
describe('chanceBeyond', () => {
  it('is 1 - Phi(1.4) = 0.0808 at 1.4 standard uncertainties', () =>
    expect(chanceBeyond([normal(0.05)], 0.07)).toBeCloseTo(1 - 0.919243340766, 4));
  it('is nothing beyond the end of a rectangle', () =>
    expect(chanceBeyond([box(1)], 1.75)).toBeLessThan(1e-5));
  it('is complementary on the other side', () => {
    const lines = [box(1), normal(0.5)];
    expect(chanceBeyond(lines, 0.7) + chanceBeyond(lines, -0.7)).toBeCloseTo(1, 6);
  });
});
