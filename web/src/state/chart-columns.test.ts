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
  return chartColumns(traces, 'railVoltage', { fromS: 0, toS: 1 }, 10);
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
