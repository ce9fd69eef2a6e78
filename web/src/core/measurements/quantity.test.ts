// SPDX-License-Identifier: MIT
// Worked examples of JCGM 100:2008 (GUM), annex H; figures are those printed there, some as recomputed from the
// printed inputs where the guide rounds on the way.
import { mean, sampleCorrelation, sampleStandardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import {
  budgetOf,
  combined,
  correlation,
  difference,
  effectiveDof,
  exact,
  linear,
  standardU,
  uncertain,
  type Source,
} from './quantity.ts';

const source = (id: string, dof = Number.POSITIVE_INFINITY, shape: Source['shape'] = 'normal'): Source => ({
  id,
  words: id,
  shape,
  dof,
  origin: 'example',
});
const input = (id: string, value: number, u: number, dof?: number) =>
  uncertain(value, [[source(id, dof), u]]);

describe('example H.1, end-gauge calibration (nm)', () => {
  const ls = input('ls', 50_000_623, 25, 18);
  const d = uncertain(215, [
    [source('repeats', 24), 5.8],
    [source('comparator random', 5), 3.9],
    [source('comparator systematic', 8), 6.7],
  ]);
  const expansion = input('as', 11.5e-6, 2e-6 / Math.sqrt(3));
  const theta = input('theta', -0.1, 0.41);
  const expansionDifference = input('da', 0, 0.58e-6, 50);
  const temperatureDifference = input('dtheta', 0, 0.029, 2);
  const gauge = combined(
    [ls, d, expansion, theta, expansionDifference, temperatureDifference],
    (l, x, a, t, da, dt) => l + x - l * (da * t + a * dt),
  );

  it('gives the printed length 50 000 838 nm', () => expect(Math.round(gauge.value)).toBe(50_000_838));
  it('gives the printed u(d) 9.7 nm with 25.6 degrees of freedom', () => {
    expect(standardU(d)).toBeCloseTo(9.7, 1);
    expect(effectiveDof(d)).toBeGreaterThan(25.3);
    expect(effectiveDof(d)).toBeLessThan(25.7);
  });
  it('gives the printed combined uncertainty 32 nm with 16 degrees of freedom', () => {
    expect(standardU(gauge)).toBeCloseTo(31.7, 1);
    expect(Math.trunc(effectiveDof(gauge))).toBe(16);
  });
  it('tells the printed contributions 25, 16.6 and 2.9 nm', () => {
    const line = (id: string) => budgetOf(gauge).find(({ source: words }) => words === id)?.u ?? 0;
    expect(line('ls')).toBeCloseTo(25, 3);
    expect(Math.abs(line('dtheta') - 16.6)).toBeLessThan(0.1);
    expect(line('da')).toBeCloseTo(2.9, 1);
  });
});

describe('example H.2, resistance and reactance from correlated readings', () => {
  const volts = [5.007, 4.994, 5.005, 4.99, 4.999];
  const amps = [19.663e-3, 19.639e-3, 19.64e-3, 19.685e-3, 19.678e-3];
  const phase = [1.0456, 1.0438, 1.0468, 1.0428, 1.0433];
  const sets = [volts, amps, phase];
  const u = sets.map((set) => sampleStandardDeviation(set) / Math.sqrt(5));
  const r = (a: number, b: number) => sampleCorrelation(sets[a], sets[b]);
  // Three inputs with given correlations as sums of three independent sources (Cholesky).
  const l = [
    [1, 0, 0],
    [r(0, 1), Math.sqrt(1 - r(0, 1) ** 2), 0],
    [r(0, 2), 0, 0],
  ];
  l[2][1] = (r(1, 2) - l[2][0] * l[1][0]) / l[1][1];
  l[2][2] = Math.sqrt(1 - l[2][0] ** 2 - l[2][1] ** 2);
  const shared = ['one', 'two', 'three'].map((id) => source(id));
  const quantities = sets.map((set, k) =>
    uncertain(
      mean(set),
      shared.map((s, j) => [s, u[k] * l[k][j]] as const),
    ),
  );
  const resistance = combined(quantities, (v, i, f) => (v / i) * Math.cos(f));
  const reactance = combined(quantities, (v, i, f) => (v / i) * Math.sin(f));
  const impedance = combined(quantities, (v, i) => v / i);

  it('gives R = 127.732 ohm, u = 0.071', () => {
    expect(resistance.value).toBeCloseTo(127.73217, 4);
    expect(standardU(resistance)).toBeCloseTo(0.0710714, 5);
  });
  it('gives X = 219.847 ohm, u = 0.295 (0.2956 unrounded)', () => {
    expect(reactance.value).toBeCloseTo(219.846512, 4);
    expect(standardU(reactance)).toBeCloseTo(0.295582, 4);
  });
  it('gives Z = 254.260 ohm, u = 0.236', () => {
    expect(impedance.value).toBeCloseTo(254.259702, 4);
    expect(standardU(impedance)).toBeCloseTo(0.236336, 4);
  });
  it('gives the correlations of the results -0.588, -0.485, 0.993', () => {
    expect(correlation(resistance, reactance)).toBeCloseTo(-0.58843, 3);
    expect(correlation(resistance, impedance)).toBeCloseTo(-0.485259, 3);
    expect(correlation(reactance, impedance)).toBeCloseTo(0.992512, 4);
  });
  it('is another figure when the correlations are left out', () => {
    const alone = sets.map((set, k) => uncertain(mean(set), [[shared[k], u[k]]]));
    const apart = combined(alone, (v, i, f) => (v / i) * Math.cos(f));
    expect(Math.abs(standardU(apart) - 0.0710714)).toBeGreaterThan(0.05);
  });
});

describe('shared and single sources', () => {
  it('has no uncertainty left in x - x', () => {
    const x = input('x', 3, 0.2);
    expect(standardU(difference(x, x))).toBe(0);
  });
  it('cancels a shared reference in a ratio and doubles it in a product', () => {
    const v = input('reference', 7.4, 0.0074);
    const i = input('reference', 2, 0.002);
    expect(standardU(combined([v, i], (a, b) => a / b))).toBeLessThan(1e-8);
    expect(standardU(combined([v, i], (a, b) => a * b)) / 14.8).toBeCloseTo(0.002, 8);
  });
  it('gives Welch-Satterthwaite 12.8 for 0.57 with 9 degrees and 0.25 with none (worked example, secondary source)', () => {
    const sum = linear([
      [1, input('a', 0, 0.57, 9)],
      [1, input('b', 0, 0.25)],
      [1, exact(4)],
    ]);
    expect(effectiveDof(sum)).toBeCloseTo(12.7956, 3);
  });
});
