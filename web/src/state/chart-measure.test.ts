// SPDX-License-Identifier: MIT
// The figures of a brushed stretch against NIST's certified values (Statistical Reference Datasets, read from the
// fixtures that name their source) and against simple-statistics, a kept library; gaps by made-up columns.
import fc from 'fast-check';
import { linearRegression, mean, standardDeviation } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { norris } from '#core/measurements/norris-fixture';
import { measured, type Measured } from './chart-measure.ts';
import type { ChartRange } from './chart-window.ts';
import type { Gap } from './trace-book.svelte.ts';

const tap = (timeS: number[], value: number[]) => ({
  timeS: Float64Array.from(timeS),
  value: Float64Array.from(value),
  length: value.length,
});
function over(timeS: number[], value: number[], range: ChartRange, gaps: Gap[] = []): Measured {
  const found = measured(tap(timeS, value), gaps, range);
  if (typeof found === 'string') throw new Error(found);
  return found;
}
/** Rows of a stream, 1 ms apart from 0.001 s on. */
const rows = (count: number) => Array.from({ length: count }, (_, index) => (index + 1) / 1000);

describe('a brushed stretch', () => {
  it('has the slope that NIST certifies for Norris, its x brought down to hundredths of a second', () => {
    const ordered = norris.points.toSorted((a, b) => a[1] - b[1]);
    const perS = 1 / 30_000;
    const found = over(
      ordered.map(([, x]) => x * perS),
      ordered.map(([y]) => y),
      { fromS: 0, toS: 0.05 },
    );
    expect(found.slopePerS * perS).toBeCloseTo(norris.slope, 9);
  });
  it('agrees with simple-statistics over any values', () =>
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -1e4, max: 1e4, noNaN: true }), { minLength: 3, maxLength: 60 }),
        (value) => {
          const timeS = rows(value.length);
          const found = over(timeS, value, { fromS: 0, toS: 1 / 1000 + value.length / 1000 });
          const line = linearRegression(timeS.map((t, index) => [t, value[index]]));
          expect(found.mean).toBeCloseTo(mean(value), 6);
          expect(found.rms).toBeCloseTo(standardDeviation(value), 6);
          expect(found.peakToPeak).toBe(Math.max(...value) - Math.min(...value));
          expect(Math.abs(found.slopePerS - line.m)).toBeLessThan(1e-6 * Math.max(1, Math.abs(line.m)));
        },
      ),
    ));
  /** Worked: 1, 2, 3, 4 a millisecond apart: mean 2.5, squares (2.25 + 0.25) 2 / 4 = 1.25, 1 V a ms = 1000 V/s. */
  it('is worked out by hand for 1, 2, 3, 4', () => {
    const found = over(rows(4), [1, 2, 3, 4], { fromS: 0.001, toS: 0.004 });
    expect(found).toMatchObject({ mean: 2.5, peakToPeak: 3 });
    expect(found.rms).toBeCloseTo(Math.sqrt(1.25), 12);
    expect(found.slopePerS).toBeCloseTo(1000, 9);
  });
  it('has the rms of a sine over whole periods: amplitude / sqrt 2, whatever it rides on', () => {
    const sine = rows(1000).map((t) => 7.4 + 0.05 * Math.sin(2 * Math.PI * 20 * t));
    const found = over(rows(1000), sine, { fromS: 0, toS: 1 });
    expect(found.rms).toBeCloseTo(0.05 / Math.SQRT2, 6);
    expect(found.mean).toBeCloseTo(7.4, 6);
  });
  it('keeps its figures on a large offset', () => {
    const value = rows(1001).map((_, index) => 1e7 + (index % 2 === 0 ? 0.1 : 0.3));
    const found = over(rows(1001), value, { fromS: 0, toS: 1.001 });
    expect(found.mean - 1e7).toBeCloseTo(0.2, 3);
    expect(found.rms).toBeCloseTo(0.1, 6);
  });
  it('takes only what lies between its edges, both with them', () =>
    expect(over(rows(9), [9, 9, 1, 2, 3, 9, 9, 9, 9], { fromS: 0.003, toS: 0.005 }).mean).toBe(2));
});
describe('no number is given', () => {
  const flat = (count: number) => Array.from({ length: count }, () => 1);
  const gaps = [{ fromS: 0.005, toS: 0.008 }];
  it('over rows that were lost', () => {
    const timeS = [0.004, 0.005, 0.008, 0.009];
    expect(measured(tap(timeS, flat(4)), gaps, { fromS: 0.004, toS: 0.009 })).toBe('gap');
    expect(measured(tap(timeS, flat(4)), gaps, { fromS: 0.008, toS: 0.009 })).toBe('too few');
  });
  it('over rows that were lost at its end', () =>
    expect(measured(tap([0.001, 0.002, 0.003, 0.005], flat(4)), gaps, { fromS: 0.001, toS: 0.0085 })).toBe(
      'gap',
    ));
  it('where the tap was not scanned in it', () =>
    expect(measured(tap([0.5, 0.501, 0.502], flat(3)), [], { fromS: 0.4, toS: 0.502 })).toBe('not scanned'));
  it('over a value beyond the range of the tap', () =>
    expect(measured(tap(rows(4), [1, Number.NaN, 1, 1]), [], { fromS: 0, toS: 0.004 })).toBe('beyond range'));
  it('from less than three values', () =>
    expect(measured(tap(rows(9), flat(9)), [], { fromS: 0.001, toS: 0.0021 })).toBe('too few'));
});
