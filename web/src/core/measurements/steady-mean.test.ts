// SPDX-License-Identifier: MIT
import { describe, expect, it } from 'vitest';
import { settledFrom, steadyMean } from './steady-mean.ts';
import { michelso } from './michelso-fixture.ts';

/** Small deterministic generator (Lehmer, 48271 mod 2^31 - 1) for noise in tests. */
function noise(seed: number): () => number {
  let state = seed;
  const unit = () => (state = (state * 48271) % 2147483647) / 2147483647;
  return () => Math.sqrt(-2 * Math.log(unit())) * Math.cos(2 * Math.PI * unit());
}
describe('steadyMean', () => {
  it('gives the certified mean and deviation of NIST StRD Michelso', () => {
    const found = steadyMean(michelso.values)!;
    expect(found.mean).toBeCloseTo(299.8524, 10);
    expect(found.sd).toBeCloseTo(0.0790105478190518, 10);
  });
  it('refuses fewer than 32 values', () => expect(steadyMean(new Float64Array(31))).toBeNull());
  it('has one degree of freedom less than it has blocks, however many values they hold', () => {
    const next = noise(3);
    const dofOf = (length: number) => steadyMean(Array.from({ length }, next))!.dof;
    expect([32, 64, 128, 3200].map(dofOf)).toEqual([3, 7, 15, 15]);
  });
  it('is near s/sqrt n for white noise', () => {
    const next = noise(11);
    const found = steadyMean(Array.from({ length: 1600 }, next))!;
    expect(found.u * 40).toBeGreaterThan(0.6);
    expect(found.u * 40).toBeLessThan(1.5);
  });
  it('is honest where neighbours are alike: first-order noise makes the mean less sure by sqrt((1+r)/(1-r))', () => {
    const next = noise(5);
    const ratios = Array.from({ length: 30 }, () => {
      let x = 0;
      const found = steadyMean(
        Array.from({ length: 3200 }, () => (x = 0.9 * x + next() * Math.sqrt(1 - 0.81))),
      )!;
      return found.u * Math.sqrt(3200);
    });
    const typical = ratios.toSorted((a, b) => a - b)[15];
    expect(typical).toBeGreaterThan(3.6);
    expect(typical).toBeLessThan(5.1);
  });
});
describe('settledFrom', () => {
  const times = Array.from({ length: 1000 }, (_, k) => k * 1e-3);
  it('finds the end of an exponential rise: within 1 % after 4.6 time constants', () => {
    const rise = times.map((t) => 1 - Math.exp(-t / 0.05));
    const found = settledFrom(times, rise, 0.01)!;
    expect(found).toBeGreaterThan(0.15);
    expect(found).toBeLessThan(0.3);
  });
  it('is null for a value that drifts to the end', () => expect(settledFrom(times, times, 0.01)).toBeNull());
  it('is not fooled by a single outlier', () => {
    const values = times.map((_, k) => (k === 900 ? 50 : 1));
    expect(settledFrom(times, values, 0.01)).toBe(0);
  });
});
