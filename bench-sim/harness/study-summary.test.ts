// SPDX-License-Identifier: MIT
import { describe, expect, it } from 'vitest';
import { cellsOf } from './study-cells.ts';
import { compatibilities } from './study-decisions.ts';
import type { CellOutcome } from './study-run.ts';
import { clopperPearson, pooledCoverage, resultSummaries, verdictCounts } from './study-summary.ts';

const outcome = (value: number, truth: number, more: Partial<CellOutcome> = {}): CellOutcome => ({
  check: 'rail-sag',
  seed: 1,
  faults: {},
  calibrated: false,
  verdict: 'pass',
  ending: 'done',
  reason: '',
  results: [
    {
      id: 'steady-drop',
      unit: 'V',
      verdict: 'pass',
      value,
      interval: [value - 0.1, value + 0.1],
      truth,
      placed: null,
      largest: { source: 'gain', share: 0.6 },
    },
    {
      id: 'recovery',
      unit: 's',
      verdict: 'not measured',
      value: null,
      interval: null,
      truth: 1,
      placed: null,
      largest: null,
    },
  ],
  rigS: 20,
  wallS: 5,
  ...more,
});

describe('the exact bounds of a share', () => {
  // With all inside, the lower bound has the closed form 0.025^(1/n); with none, 1 - 0.025^(1/n).
  it('agrees with the closed form at the ends', () => {
    for (const n of [3, 20, 180]) {
      expect(clopperPearson(n, n)[0]).toBeCloseTo(0.025 ** (1 / n), 9);
      expect(clopperPearson(n, n)[1]).toBe(1);
      expect(clopperPearson(0, n)).toEqual([0, expect.closeTo(1 - 0.025 ** (1 / n), 9)]);
    }
  });
  // By definition the binomial tails at the bounds are 2.5 % each; summed here term by term.
  it('leaves 2.5 % in each binomial tail', () => {
    const [low, high] = clopperPearson(55, 60);
    const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n, k - 1) * (n - k + 1)) / k);
    const term = (p: number, k: number) => choose(60, k) * p ** k * (1 - p) ** (60 - k);
    const sum = (p: number, from: number, to: number) => {
      let total = 0;
      for (let k = from; k <= to; k++) total += term(p, k);
      return total;
    };
    expect(sum(low, 55, 60)).toBeCloseTo(0.025, 6);
    expect(sum(high, 0, 55)).toBeCloseTo(0.025, 6);
  });
});
describe('the figures of a study', () => {
  it('counts what holds the truth, of what was measured, without the faulty cells', () => {
    const outcomes = [
      outcome(1, 1.05),
      outcome(1, 1.2),
      outcome(1, 0.91),
      outcome(1, 9, { faults: { 'soft-rail': 1 } }),
    ];
    expect(pooledCoverage(outcomes)).toMatchObject({ inside: 2, of: 3 });
    const [drop, ...rest] = resultSummaries(outcomes);
    expect(rest).toEqual([]);
    expect(drop).toMatchObject({ id: 'steady-drop', inside: 2, of: 3 });
    expect(drop.medianHalfWidthPerCent).toBeCloseTo(10, 6);
    expect(drop.worstErrorShare).toBeCloseTo(2, 6);
    expect(drop.largest).toEqual({ source: 'gain', share: 0.6 });
  });
  it('counts a trip by its name, and keeps one reason of a kind', () => {
    const tripped = { verdict: 'not measured', ending: 'tripped', reason: 'The stop line opened at 2.1 s.' };
    const later = { ...tripped, reason: 'The stop line opened at 2.3 s.', seed: 2 };
    const faults = { 'stop-line-open': 1 };
    const [counted] = verdictCounts([
      outcome(1, 1, { ...tripped, faults }),
      outcome(1, 1, { ...later, faults }),
    ]);
    expect(counted).toMatchObject({ expected: 'tripped', counts: { tripped: 2 } });
    expect(counted.reasons).toEqual(['seed 1, tripped: The stop line opened at 2.1 s.']);
  });
  it('has a cell for each seed, or each fault at each severity on its own check', () => {
    const plan = { checks: ['rail-sag'], firstSeed: 5, seeds: 3, faults: [], severities: [0, 1] };
    expect(cellsOf(plan).map(({ seed }) => seed)).toEqual([5, 6, 7]);
    const spoilt = cellsOf({ ...plan, faults: ['soft-rail', 'weak-rotor'] });
    expect(spoilt).toHaveLength(6);
    expect(spoilt.filter(({ faults }) => faults['soft-rail'] === 1)).toHaveLength(3);
  });
});
describe('compatible with 95 to 98.5 %', () => {
  // By hand: P(X <= 920) of Bin(1000, 0.95) is 3e-5, P(X >= 1000) of Bin(1000, 0.985) is 0.985^1000 = 2.7e-7.
  it('refuses coverage that is too poor and intervals that are too wide', () =>
    expect(
      compatibilities([
        [920, 1000],
        [1000, 1000],
        [955, 1000],
      ]),
    ).toEqual([expect.stringContaining('too few inside'), expect.stringContaining('too wide'), 'yes']));
  it('asks more of one among many (Holm)', () => {
    const many = Array.from({ length: 40 }, () => [950, 1000] as const);
    expect(compatibilities([[930, 1000]])[0]).toContain('too few');
    expect(compatibilities([[930, 1000], ...many])[0]).toBe('yes');
  });
});
