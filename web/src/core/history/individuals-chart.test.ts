// SPDX-License-Identifier: MIT
// The worked example of the NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2 (Individuals control charts):
// ten batches, d2 = 1.128. Published: mean 50.81, mean moving range 1.8778, limits 45.8159 and 55.8041.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { individualsChart, movingRanges } from './individuals-chart.ts';

const batches = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];

describe('the handbook’s example', () => {
  const chart = individualsChart(batches);
  it.each([
    ['centre', chart.centre, 50.81],
    ['meanRange', chart.meanRange, 1.8778],
    ['upper', chart.upper, 55.8041],
    ['lower', chart.lower, 45.8159],
    // D4 x mean range, 3.267 x 1.87778: the chart of the ranges (D4 from memory).
    ['rangeLimit', chart.rangeLimit, 6.1347],
  ])('%s', (_, got, published) => expect(Math.abs(got - published)).toBeLessThan(5e-5));
  it('moving ranges', () =>
    movingRanges(batches).forEach((range, i) =>
      expect(range).toBeCloseTo([2, 2.3, 1.4, 3.5, 3.4, 1.4, 0.2, 1.2, 1.5][i], 10),
    ));
  it('is 2.66 mean ranges wide either side (E2 = 3/1.128 = 2.660)', () =>
    expect((chart.upper - chart.centre) / chart.meanRange).toBeCloseTo(2.66, 3));
});
it('moves and stretches with its values', () =>
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 2, maxLength: 20 }),
      fc.double({ min: 0.1, max: 10, noNaN: true }),
      (values, factor) => {
        const [one, other] = [individualsChart(values), individualsChart(values.map((v) => 5 + factor * v))];
        expect(other.upper).toBeCloseTo(5 + factor * one.upper, 6);
        expect(other.lower).toBeCloseTo(5 + factor * one.lower, 6);
      },
    ),
  ));
it('needs two values', () => expect(() => individualsChart([1])).toThrow('two values at least'));
