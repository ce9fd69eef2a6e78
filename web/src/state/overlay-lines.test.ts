// SPDX-License-Identifier: MIT
// Runs over each other: which lines there are, as far as which of them goes, marks with their run's letter, and a
// brushed stretch told for each run. Figures worked out by hand.
import { describe, expect, it } from 'vitest';
import { usualWish } from '#core/units/shown-unit';
import { comparedRun, type ComparedRun } from './compared-run.ts';
import type { Letter } from './comparison.svelte.ts';
import { keptRecord } from './kept-run-fixture.ts';
import {
  overlayExtent,
  overlayLines,
  overlayMarks,
  overlayRows,
  overlaySentence,
  overlayTable,
} from './overlay-lines.ts';
import { TraceBook, type Gap, type TraceMark } from './trace-book.svelte.ts';

const letterOf = (id: string) => id as Letter;
interface Made {
  readonly fromS?: number;
  readonly gaps?: Gap[];
  readonly marks?: TraceMark[];
}
/** A value every 10 ms from `fromS` on. */
function run(id: string, values: number[], { fromS = 0, gaps = [], marks = [] }: Made = {}): ComparedRun {
  const traces = new TraceBook();
  const timeS = Float64Array.from(values, (_, k) => fromS + k / 100);
  const columns = [{ tap: 'railVoltage', unit: 'V', timeS, value: Float64Array.from(values) }];
  traces.append({ runId: id, columns, gaps, marks }, true);
  return { id, traces, live: true, telling: 'railVoltage' };
}
const lines = (...runs: ComparedRun[]) => overlayLines(runs, 'railVoltage', letterOf);
const plain = (text: string) => text.replaceAll(/\s/g, ' ');

describe('the lines of an overlay', () => {
  it('are one for each run that has the tap, A in its quantity and solid, the others in ink and dashed', () => {
    const drawn = lines(run('A', [7, 7]), run('B', [6, 6]), run('C', []));
    expect(drawn.map(({ letter, colour }) => [letter, colour])).toEqual([
      ['A', '--volt'],
      ['B', '--ink'],
    ]);
    expect(drawn.map(({ dash }) => dash.length)).toEqual([0, 2]);
  });
  it('are none for a tap that nobody has', () =>
    expect(overlayLines([run('A', [7])], 'soup', letterOf)).toEqual([]));
  it('go from the earliest second of any to the latest of any', () =>
    expect(overlayExtent(lines(run('A', [7, 7], { fromS: -1 }), run('B', [7, 7, 7])))).toEqual({
      fromS: -1,
      toS: 0.02,
    }));
});
describe('the marks of an overlay', () => {
  it('name their run, going live once for all', () => {
    const marks = [
      { atS: 0, label: 'live' },
      { atS: 1, label: 'trip' },
    ];
    const drawn = lines(run('A', [7, 7], { marks }), run('B', [7, 7], { marks }));
    expect(overlayMarks(drawn).map(({ label, atS }) => `${label} ${atS}`)).toEqual([
      'live 0',
      'A trip 1',
      'B trip 1',
    ]);
  });
});
describe('a brushed stretch', () => {
  const brush = { fromS: 0, toS: 0.03 };
  /** 7.40 to 7.46 V: mean 7.43, 0.06 V from peak to peak, 2 V/s. */
  it('is told for every run by itself', () => {
    const rows = overlayRows(
      lines(run('A', [7.4, 7.42, 7.44, 7.46]), run('B', [1, 2, 3, 4])),
      brush,
      usualWish,
    );
    expect(rows.map(({ title }) => title)).toEqual(['A', 'B']);
    expect(rows.map(({ figures }) => plain(figures[0].value))).toEqual(['7.430 V', '2.50 V']);
    expect(plain(rows[0].figures[3].value)).toBe('2.0 V/s');
  });
  it('gives no number for the run that has a gap there, and one for the other', () => {
    const gaps = [{ fromS: 0.01, toS: 0.02 }];
    const rows = overlayRows(
      lines(run('A', [1, 1, 1, 1]), run('B', [1, 1, 1, 1], { gaps })),
      brush,
      usualWish,
    );
    expect(rows.map(({ trouble }) => trouble)).toEqual([null, expect.stringContaining('has a gap here')]);
  });
  it('gives no number for a run that ended before', () =>
    expect(overlayRows(lines(run('A', [1, 1, 1])), { fromS: 0, toS: 1 }, usualWish)[0].trouble).toMatch(
      /not scanned/,
    ));
});
it('stands in words and as a table', () => {
  const drawn = lines(run('A', [7, 7.5]), run('B', [6, 6.5]));
  expect(plain(overlaySentence(drawn, usualWish))).toBe(
    'Rail voltage of A, B over the seconds since the rig went live: A from 7.00 V to 7.50 V; B from 6.00 V to 6.50 V',
  );
  expect(
    overlayTable(drawn, { fromS: 0, toS: 1 }, usualWish).map(({ title, most }) => [title, plain(most)]),
  ).toEqual([
    ['A', '7.50 V'],
    ['B', '6.50 V'],
  ]);
});
describe('a kept record to compare', () => {
  it('counts its seconds since the rig went live', () => {
    const events = [{ atS: 0.01, kind: 'state', words: 'live' }];
    const text = JSON.stringify({ ...JSON.parse(keptRecord()), events });
    const [late, whole] = [comparedRun(text), comparedRun(keptRecord())];
    expect([late.live, whole.live]).toEqual([true, false]);
    const first = ({ traces }: ComparedRun) => traces.taps[0].timeS[0];
    expect(first(late)).toBeCloseTo(first(whole) - 0.01, 9);
    expect(late.traces.marks).toEqual([{ atS: 0, label: 'live' }]);
  });
});
