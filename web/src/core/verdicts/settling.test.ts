// SPDX-License-Identifier: MIT
// What would settle an undecided result, against figures worked out by hand; normal quantile 1.959964 and the
// t quantile of 9 degrees, 2.2622, from the tables of ISO 3534 (from memory, also in GUM table G.2).
import { describe, expect, it } from 'vitest';
import type { BudgetLine } from '../measurements/measurement.ts';
import { chanceOut, isDecided } from './chance-out.ts';
import type { Limit } from './limit.ts';
import { settlingOf, type WithCalibrated } from './settling.ts';

const endless = Number.POSITIVE_INFINITY;
const line = (source: string, u: number, shape: BudgetLine['shape'], dof = endless): BudgetLine => ({
  source,
  u,
  shape,
  dof,
  origin: 'rig description',
});
const limit = (bounds: Partial<Limit>): Limit => ({
  unit: 'A',
  kind: 'published',
  source: 'example',
  ...bounds,
});
const near = (value: number, expected: number, share = 0.01) =>
  expect(Math.abs(value / expected - 1)).toBeLessThan(share);

describe('the line that rules', () => {
  it('has the share of its variance: 0.4^2/(0.4^2 + 0.3^2) = 64 %', () => {
    const budget = [line('a', 0.3, 'normal'), line('b', 0.4, 'normal')];
    const { dominant, half, distance } = settlingOf({ value: 9.5, budget }, limit({ max: 10 }));
    expect(dominant?.source).toBe('b');
    near(dominant!.share, 0.64);
    near(half, 1.959964 * 0.5);
    near(distance, 0.5);
  });
});
describe('what it must be known to', () => {
  it('is the distance itself for one bound, whatever the shape', () => {
    const normal = settlingOf({ value: 9.85, budget: [line('a', 0.1, 'normal')] }, limit({ max: 10 }));
    near(normal.wantedHalf, 0.15);
    const box = settlingOf({ value: 9.85, budget: [line('a', 0.1, 'rectangular')] }, limit({ max: 10 }));
    near(box.wantedHalf, 0.15);
  });
  it('holds from the failing side too', () => {
    const out = settlingOf({ value: 10.15, budget: [line('a', 0.1, 'normal')] }, limit({ max: 10 }));
    near(out.wantedHalf, 0.15);
  });
  it('is less between two near bounds: half = 1 at the middle leaves 2.5 % on both sides together, z = 2.2414', () => {
    // 0.1 either side: u must be 0.1/2.2414, its half-width 1.959964 of that = 0.08744.
    const mid = settlingOf({ value: 10, budget: [line('a', 0.1, 'normal')] }, limit({ min: 9.9, max: 10.1 }));
    near(mid.wantedHalf, 0.08744);
  });
});
describe('repeats', () => {
  const scatter = (u: number, dof: number) => line('scatter', u, 'student', dof);
  it('are none that help where nothing scatters', () =>
    expect(settlingOf({ value: 9.9, budget: [line('a', 0.1, 'normal')] }, limit({ max: 10 })).repeats).toBe(
      null,
    ));
  it.each([
    // With many degrees: n = (1.96 x 0.1/d)^2, rounded up: d 0.1 -> 3.84, d 0.05 -> 15.4, d 0.03 -> 42.7.
    [0.1, 4],
    [0.05, 16],
    [0.03, 43],
  ])('at %d from the bound, u = 0.1: %d', (distance, runs) =>
    expect(
      settlingOf({ value: 10 - distance, budget: [scatter(0.1, 1e4)] }, limit({ max: 10 })).repeats,
    ).toBe(runs),
  );
  it('are null where fifty do not do: d 0.02 needs 96', () =>
    expect(settlingOf({ value: 9.98, budget: [scatter(0.1, 1e4)] }, limit({ max: 10 })).repeats).toBe(null));
  it('count the fixed lines that stay: (0.15/1.96)^2 - 0.05^2 leaves 0.0579, n = (0.1/0.0579)^2 = 2.98', () => {
    const budget = [scatter(0.1, 1e4), line('fixed', 0.05, 'normal')];
    expect(settlingOf({ value: 9.85, budget }, limit({ max: 10 })).repeats).toBe(3);
  });
  it('gain degrees of freedom as well: t(9) 2.2622 at one run, t(18) 2.1009 at two', () => {
    // d = 0.2: one run needs u <= 0.0884; two runs need 0.1/sqrt 2 = 0.0707 <= 0.2/2.1009 = 0.0952.
    const few = { value: 9.8, budget: [scatter(0.1, 9)] };
    expect(isDecided(few, limit({ max: 10 }))).toBe(false);
    expect(settlingOf(few, limit({ max: 10 })).repeats).toBe(2);
  });
  it('settle the verdict when put in, and one run fewer does not', () => {
    const budget = [scatter(0.1, 12), line('fixed', 0.03, 'rectangular')];
    const { repeats } = settlingOf({ value: 9.9, budget }, limit({ max: 10 }));
    const over = (n: number) =>
      budget.map((each) =>
        each.shape === 'student' ? { ...each, u: each.u / Math.sqrt(n), dof: each.dof * n } : each,
      );
    expect(isDecided({ value: 9.9, budget: over(repeats!) }, limit({ max: 10 }))).toBe(true);
    expect(isDecided({ value: 9.9, budget: over(repeats! - 1) }, limit({ max: 10 }))).toBe(false);
  });
});
describe('a calibration', () => {
  const gain = (tap: string, u: number) => line(`gain of ${tap}`, u, 'rectangular');
  /** Each tap's gain left at a share of what it was. */
  const leaving =
    (budget: readonly BudgetLine[], shares: Readonly<Record<string, number>>): WithCalibrated =>
    (tap) =>
      tap in shares
        ? {
            value: 0,
            budget: budget.map((one) =>
              one.source.endsWith(` ${tap}`) ? { ...one, u: one.u * shares[tap] } : one,
            ),
          }
        : undefined;
  const calibrationOf = (budget: readonly BudgetLine[], shares: Readonly<Record<string, number>>) =>
    settlingOf({ value: 9.9, budget }, limit({ max: 10 }), leaving(budget, shares)).calibration;

  it('brings one rectangle of u = 0.1 from 0.95 sqrt(3) 0.1 = 0.1645 to half of it, 0.0823', () => {
    const found = calibrationOf([gain('railVoltage', 0.1)], { railVoltage: 0.5 });
    expect(found).toMatchObject({ tap: 'railVoltage', settles: true });
    near(found!.half, 0.0823);
  });
  it('leaves the other lines: normal 0.1 beside a gain of little', () => {
    const found = calibrationOf([line('other', 0.1, 'normal'), gain('railCurrent', 0.02)], {
      railCurrent: 0.6,
    });
    near(found!.half, 1.96 * Math.hypot(0.1, 0.02 * 0.6), 0.02);
    expect(found!.settles).toBe(false);
  });
  it('picks the tap that brings most, not the largest line', () => {
    const budget = [gain('railVoltage', 0.1), gain('packCurrentNarrow', 0.09)];
    expect(calibrationOf(budget, { railVoltage: 0.9, packCurrentNarrow: 0.5 })?.tap).toBe(
      'packCurrentNarrow',
    );
  });
  it('is none of a tap that is calibrated, of one that it would bring nothing, or where nobody can tell', () => {
    const kept = [{ ...gain('railVoltage', 0.1), origin: 'calibration of 2026-11-20' }];
    expect(calibrationOf(kept, { railVoltage: 0.5 })).toBe(null);
    expect(calibrationOf([gain('packCurrentWide', 0.1)], {})).toBe(null);
    expect(
      settlingOf({ value: 9.9, budget: [gain('railVoltage', 0.1)] }, limit({ max: 10 })).calibration,
    ).toBe(null);
  });
});
describe('a limit carried by a model', () => {
  it('brings its own line: u 0.3 of the value and 0.04 of a bound of 10 are 0.5 together', () => {
    const budget = [line('a', 0.3, 'normal')];
    const carried = limit({ max: 10, doubt: { words: 'carried', share: 0.04 } });
    // Convolution of N(0, 0.3) with a rectangle of half-width 0.4 sqrt 3, upper 95 % end by scipy 1.17 (quad of
    // norm.cdf over the rectangle, brentq): 0.9396.
    const { half, dominant } = settlingOf({ value: 9.5, budget }, carried);
    near(half, 0.9396, 0.01);
    expect(dominant).toMatchObject({ source: 'carried' });
    near(dominant!.share, 0.64);
    expect(chanceOut({ value: 9.2, budget }, carried)).toBeGreaterThan(
      chanceOut({ value: 9.2, budget }, limit({ max: 10 })),
    );
  });
});
