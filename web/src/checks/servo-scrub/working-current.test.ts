// SPDX-License-Identifier: MIT
// A made-up line of current: nothing, an inrush that decays, work, rest. All four figures must come back.
import { describe, expect, it } from 'vitest';
import { worked } from './working-current.ts';

const intervalS = 104e-6;
const riseS = 0.015;
/** Inrush of 2 A decaying within 5 ms on top of 0.5 A for 150 ms, then 0.06 A. */
const current = (timeS: number, workA = 0.5, restA = 0.06): number => {
  const sinceS = timeS - riseS;
  if (sinceS < 0) return 0.01;
  return sinceS < 0.15 ? workA + 2 * Math.exp(-sinceS / 0.005) : restA;
};
const line = (workA?: number, restA?: number) =>
  Float64Array.from({ length: 4800 }, (_, k) => current(k * intervalS, workA, restA));

describe('a move', () => {
  it('is refused when it never comes to rest, and when nothing moves', () => {
    expect(() => worked(line(0.5, 0.48), intervalS)).toThrow(/never came to rest/);
    expect(() => worked(new Float64Array(4800).fill(0.012), intervalS)).toThrow(/never moved/);
  });
  it('has its peak over 2 ms, as the integral of the inrush says', () => {
    const overInrush = (2 * 0.005 * (1 - Math.exp(-0.002 / 0.005))) / 0.002;
    expect(worked(line(), intervalS).peakA).toBeCloseTo(0.5 + overInrush, 1);
  });
  it('has its work, its rest and its time', () => {
    const found = worked(line(), intervalS);
    expect(Math.abs(found.workA - 0.5)).toBeLessThan(0.002);
    expect(found.restA).toBeCloseTo(0.06, 9);
    expect(Math.abs(found.workS - 0.15)).toBeLessThan(0.002);
  });
});
