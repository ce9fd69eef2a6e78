// SPDX-License-Identifier: MIT
// Trend against scipy 1.17 (stats.kendalltau, exact) and all orders counted; change point against the data of Page
// (1955) in table 1 of Pettitt (1979): step after the 17th value, K = 232, p = 0.014 (values from memory, they give
// the published figures); rates of false alarm by simulation.
import { describe, expect, it } from 'vitest';
import { seededRandom } from '#sim/seeded-random';
import { changePointOf } from './change-point.ts';
import { bestSlope, bestStep, driftOf, falseAlarm, outsideRate } from './drift.ts';
import { individualsChart } from './individuals-chart.ts';
import { kendallS, trendOf } from './trend-test.ts';

function orders(n: number): number[][] {
  if (n === 0) return [[]];
  return orders(n - 1).flatMap((rest) =>
    Array.from({ length: n }, (_, at) => [...rest.slice(0, at), n, ...rest.slice(at)]),
  );
}
describe('trend', () => {
  it.each([
    [[1, 2, 3, 4], 6, 0.08333333333333333],
    [[1, 2, 3, 5, 4], 8, 0.08333333333333333],
    [[1, 2, 4, 3, 5, 6], 13, 0.016666666666666666],
    [[3, 1, 2, 5, 4, 7, 6, 8], 20, 0.014136904761904762],
    [[2, 1, 4, 3, 6, 5, 8, 7, 10, 9], 35, 0.0009463183421516755],
  ])('of %j: S = %d, p = %d (scipy)', (values, s, p) => {
    expect(trendOf(values).s).toBe(s);
    expect(trendOf(values).p).toBeCloseTo(p, 12);
    expect(trendOf(values.map((value) => -value)).p).toBeCloseTo(p, 12);
  });
  it('has the chances of all 720 orders of six values', () => {
    const all = orders(6).map(kendallS);
    for (const s of [3, 7, 11, 15]) {
      const of = orders(6).find((order) => kendallS(order) === s)!;
      expect(trendOf(of).p).toBeCloseTo(all.filter((each) => Math.abs(each) >= s).length / 720, 12);
    }
  });
  it('is none in equal values', () => expect(trendOf([5, 5, 5, 5, 5])).toEqual({ s: 0, p: 1 }));
});
// prettier-ignore
const page = [-1.05, 0.96, 1.22, 0.58, -0.98, -0.03, -1.54, -0.71, -0.35, 0.66, 0.44, 0.91, -0.02, -1.42, 1.26,
  -1.02, -0.81, 1.66, 1.05, 0.97, 2.14, 1.22, -0.24, 1.6, 0.72, -0.12, 0.44, 0.03, 0.66, 0.56, 1.37, 1.66, 0.1,
  0.8, 1.29, 0.49, -0.07, 1.18, 3.29, 1.84];
it('change point of Page’s data: after 17, K = 232, p = 0.014', () => {
  const found = changePointOf(page)!;
  expect(found).toMatchObject({ after: 17, k: 232 });
  expect(found.p).toBeCloseTo(0.014, 2.5);
});
describe('a history', () => {
  const first = [3.0, 3.04, 2.98, 3.02, 2.99];
  it('of the same scatter is scatter', () =>
    expect(driftOf(first, [3.03, 2.97, 3.01], 'A')).toMatchObject({ kind: 'scatter', outside: [] }));
  it('that rises run by run drifts, by so much a run', () => {
    const found = driftOf(first, [3.03, 3.06, 3.09, 3.12, 3.15, 3.18], 'A');
    expect(found.kind).toBe('drift');
    expect(found.perRun).toBeCloseTo(0.028875, 6);
    expect(found.words).toMatch(/drifts by \+0\.029 A a run since run 5.*at most 1 of 100 looks/);
  });
  it('that jumps and stays there has stepped, after the fifth run by 0.4', () => {
    const found = driftOf(first, [3.4, 3.42, 3.39], 'A');
    expect(found).toMatchObject({ kind: 'step', step: { after: 5 }, outside: [5, 6, 7] });
    expect(found.step!.by).toBeCloseTo(0.397, 3);
    expect(found.words).toContain('Note a repair');
  });
  it('with one run outside asks for another', () =>
    expect(driftOf(first, [3.02, 3.4], 'A')).toMatchObject({ kind: 'one outside', outside: [6] }));
  it('that went outside once and came back is scatter', () =>
    expect(driftOf(first, [3.4, 3.01], 'A')).toMatchObject({ kind: 'scatter', outside: [5] }));
  it('without later runs, or without a baseline, is too short', () => {
    expect(driftOf(first, [], 'A').kind).toBe('too few');
    expect(driftOf([3], [3, 3], 'A').kind).toBe('too few');
  });
  it('of equal values does not drift', () =>
    expect(driftOf([3, 3, 3, 3, 3], [3, 3], 'A').kind).toBe('scatter'));
});
it('slope and step leave the squares of a fit by hand', () => {
  // 1 2 3 4: slope 1 from the first, nothing left; best step 1.5 | 3.5 leaves 4 x 0.25 = 1.
  expect(bestSlope([1, 2, 3, 4])).toEqual({ from: 1, perRun: 1, left: 0 });
  expect(bestSlope([1, 1, 1, 3, 5])).toMatchObject({
    from: 3,
    perRun: expect.closeTo(2, 9),
    left: expect.closeTo(0, 12),
  });
  expect(bestStep([1, 2, 3, 4])).toEqual({ after: 2, by: 2, left: 1 });
});
it('drift from the first run on is told as such', () =>
  expect(driftOf([1, 2, 3.1, 3.9, 5], [6, 7.1, 8], 'A').words).toContain('+1 A a run from the first run on'));
describe('false alarms of an unchanged part', () => {
  const series = 20_000;
  const random = seededRandom(5, 'unchanged');
  const drawn = Array.from({ length: series }, () => Array.from({ length: 20 }, () => random.gaussian()));
  const share = (holds: (values: number[]) => boolean) => drawn.filter(holds).length / series;
  const within = (rate: number) => 5 * Math.sqrt((rate * (1 - rate)) / series);
  const side = (values: number[], first: number, at: number) => {
    const { lower, upper } = individualsChart(values.slice(0, first));
    return values[at] > upper ? 1 : values[at] < lower ? -1 : 0;
  };
  it.each([2, 3, 4, 5])('one run outside limits from %i: the rate that is told', (n) => {
    const { one } = outsideRate(n);
    expect(Math.abs(share((v) => side(v, n, n) !== 0) - one)).toBeLessThan(within(one));
  });
  it.each([2, 3, 4, 5])('two in a row on one side of limits from %i: the rate that is told', (n) => {
    const { two } = outsideRate(n);
    const found = share((v) => side(v, n, n) !== 0 && side(v, n, n) === side(v, n, n + 1));
    expect(Math.abs(found - two)).toBeLessThan(within(two));
  });
  it('from more first runs than the table has are told as for its most', () =>
    expect(outsideRate(12)).toEqual(outsideRate(5)));
  it('trend and change point together: at most 1 %, after 8 as after 20 runs', () => {
    const spoken = (values: number[]) =>
      trendOf(values).p <= falseAlarm / 2 || changePointOf(values)!.p <= falseAlarm / 2;
    for (const n of [8, 20])
      expect(share((v) => spoken(v.slice(0, n)))).toBeLessThan(falseAlarm + within(falseAlarm));
  });
});
