// SPDX-License-Identifier: MIT
// What a chart says of itself and of a brushed stretch, in the units of the person; figures worked out by hand.
import { describe, expect, it } from 'vitest';
import { usualWish, type UnitWish } from '#core/units/shown-unit';
import { chartSentence, measuredRows, measuredSentence, tapTable, windowWords } from './chart-words.ts';
import { TraceBook } from './trace-book.svelte.ts';

const inFahrenheit = { ...usualWish, temperature: 'fahrenheit' } as const;
function book(unit: string, value: number[], gaps: { fromS: number; toS: number }[] = []): TraceBook {
  const traces = new TraceBook();
  const timeS = Float64Array.from(value, (_, index) => index / 100);
  const tap = unit === 'C' ? 'thermistorMotor' : 'railVoltage';
  const columns = [{ tap, unit, timeS, value: Float64Array.from(value) }];
  traces.append({ runId: 'r', columns, gaps, marks: [] }, false);
  return traces;
}
const brush = { fromS: 0, toS: 0.03 };
const said = (traces: TraceBook, wish: UnitWish = usualWish) =>
  measuredSentence(brush, measuredRows(traces.taps, traces.gaps, brush, wish)).replaceAll(/\s/g, ' ');

describe('a brushed stretch in words', () => {
  /** 7.40 7.42 7.44 7.46 V at 10 ms: mean 7.43, 0.06 p-p, rms 0.02 sqrt(1.25) = 0.0224, slope 2 V/s. */
  it('gives every figure with its unit', () =>
    expect(said(book('V', [7.4, 7.42, 7.44, 7.46]))).toBe(
      'From 0.0000 s to 0.0300 s: 0.0300 s brushed. Rail voltage: mean 7.430 V, peak to peak 0.060 V, ' +
        'rms about the mean 0.022 V, slope 2.0 V/s',
    ));
  /** 20, 21, 22, 23 C are 68 to 73.4 F: mean 70.7, 5.4 p-p, rms 1.8 sqrt(1.25) = 2.01, slope 180 F/s. */
  it('gives temperatures in degrees Fahrenheit where chosen, differences without the offset', () =>
    expect(said(book('C', [20, 21, 22, 23]), inFahrenheit)).toContain(
      'Motor can: mean 70.7 °F, peak to peak 5.4 °F, rms about the mean 2.0 °F, slope 180 °F/s',
    ));
  it('falls with a minus sign', () => expect(said(book('V', [3, 2, 1, 0]))).toContain('slope −100 V/s'));
  it('gives no number over a gap', () =>
    expect(said(book('V', [1, 1, 1, 1], [{ fromS: 0.01, toS: 0.02 }]))).toMatch(
      /has a gap here, so no number$/,
    ));
});
describe('a chart in words', () => {
  it('says its extremes without what lies beyond the range', () =>
    expect(chartSentence(book('V', [1, Number.NaN, 3]), 'railVoltage', usualWish)).toBe(
      'Rail voltage over 0 s: from 1.00\u00a0V to 3.00\u00a0V',
    ));
  it('says that nothing lay inside', () =>
    expect(chartSentence(book('V', [Number.NaN, Number.NaN]), 'railVoltage', usualWish)).toContain(
      'nothing inside',
    ));
  it('has a table of what is shown', () =>
    expect(tapTable(book('V', [1, 2, 3, 9]).taps, { fromS: 0, toS: 0.02 }, usualWish)).toEqual([
      { title: 'Rail voltage', least: '1.00\u00a0V', mean: '2.00\u00a0V', most: '3.00\u00a0V' },
    ]));
  it('says which part of the run is shown', () => {
    expect(windowWords({ fromS: 0, toS: 36 }, { fromS: 0, toS: 34.6 }, true)).toBe(
      'All of it is shown: 34.6\u00a0s',
    );
    expect(windowWords({ fromS: 5, toS: 7.5 }, { fromS: 0, toS: 34.6 }, false)).toBe(
      '5.00\u00a0s to 7.50\u00a0s is shown',
    );
  });
});
