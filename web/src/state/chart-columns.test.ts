// SPDX-License-Identifier: MIT
// What a chart draws of made-up columns, worked out by hand.
import { describe, expect, it } from 'vitest';
import { chartColumns } from './chart-columns.ts';
import { TraceBook } from './trace-book.svelte.ts';

function drawn(timeS: number[], value: number[], gaps: { fromS: number; toS: number }[] = []) {
  const traces = new TraceBook();
  const columns = [
    { tap: 'railVoltage', unit: 'V', timeS: Float64Array.from(timeS), value: Float64Array.from(value) },
  ];
  traces.append({ runId: 'r', columns, gaps, marks: [] }, false);
  return chartColumns(traces.taps[0], traces.gaps, { fromS: 0, toS: 1 }, 10);
}

describe('chart columns', () => {
  it('keep mean, least and most of what falls on one pixel', () => {
    const [, mean, least, most] = drawn([0.06, 0.07, 0.08, 0.11], [1, 2, 6, 4]);
    expect([mean, least, most]).toEqual([
      [3, 4],
      [1, 4],
      [6, 4],
    ]);
  });
  it.each([
    ['a tap was not scanned for a while', [0.01, 0.02, 0.5, 0.51], [1, 1, 3, 3], []],
    ['rows were lost', [0.01, 0.02, 0.06, 0.07], [1, 1, 3, 3], [{ fromS: 0.02, toS: 0.06 }]],
    ['a value lies beyond its range', [0.01, 0.02, 0.03, 0.04], [1, Number.NaN, 3, 3], []],
  ])('are cut open where %s', (_what, timeS, value, gaps) => {
    expect(drawn(timeS, value, gaps)[1]).toEqual([1, null, 3]);
  });
});

describe('the decimation of a stream', () => {
  /** A sine of 50 Hz on 1 068 rows a second, with one value far out. */
  const timeS = Float64Array.from({ length: 10_684 }, (_, index) => index * 0.000936);
  const value = timeS.map((t) => Math.sin(2 * Math.PI * 50 * t));
  value[5000] = 9;
  const tap = { timeS, value, length: timeS.length };
  const drawn = (fromS: number, toS: number) => chartColumns(tap, [], { fromS, toS }, 500);

  it('draws no more points than pixels, and loses neither the spike nor the extremes', () => {
    const [points, , least, most] = drawn(0, 10);
    expect(points.length).toBeLessThanOrEqual(502);
    expect(Math.max(...(most as number[]))).toBe(9);
    expect(Math.min(...(least as number[]))).toBe(Math.min(...value));
  });
  it('keeps every row once zoomed in, each at its own time', () => {
    const [points, mean, least, most] = drawn(4.6, 4.8);
    const shown = [...timeS.keys()].filter((index) => timeS[index] >= 4.6 && timeS[index] <= 4.8);
    const rows = [shown[0] - 1, ...shown, shown.at(-1)! + 1];
    expect(points).toEqual(rows.map((index) => timeS[index]));
    expect(mean).toEqual(rows.map((index) => value[index]));
    expect([least, most]).toEqual([mean, mean]);
  });
  it('has least and most of the rows of each pixel, as a search through all rows finds them', () => {
    const pixelS = 10 / 500;
    const [points, , least, most] = drawn(0, 10);
    for (const pixel of [0, 17, 233, 499]) {
      const mine = [...value].filter((_, index) => Math.floor(timeS[index] / pixelS) === pixel);
      const at = points.findIndex((t) => Math.floor(t / pixelS) === pixel);
      expect([least[at], most[at]]).toEqual([Math.min(...mine), Math.max(...mine)]);
    }
  });
  it('draws nothing that came after the picture was held', () => {
    const [points] = chartColumns(tap, [], { fromS: 0, toS: 10 }, 500, 2);
    expect(points.at(-1)).toBeLessThanOrEqual(2);
    expect(points.at(-1)).toBeGreaterThan(1.99);
  });
});
