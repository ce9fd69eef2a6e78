// SPDX-License-Identifier: MIT
// The sheet says what was measured and nothing else: parts of the car as it is now, worst result of each check, all
// that was typed escaped.
import { describe, expect, it } from 'vitest';
import { marmotCar } from '#core/parts/marmot-fixture';
import type { ResultLine, RunSummary } from '../run-summary.ts';
import { chartedRow } from './charted-row.ts';
import { chartSvg } from './sheet-chart.ts';
import { sheetContent } from './sheet-content.ts';
import { sheetHtml } from './sheet-html.ts';

const result = (id: string, verdict: ResultLine['verdict'], more: Partial<ResultLine> = {}): ResultLine => ({
  id,
  title: `Title of ${id}`,
  unit: 'A',
  verdict,
  judged: true,
  value: 2.31,
  interval: [2.25, 2.37],
  limit: { max: 3.4, unit: 'A', kind: 'rating', source: 'label' },
  ...more,
});
const run = (checkId: string, results: ResultLine[], more: Partial<RunSummary> = {}): RunSummary => ({
  form: 3,
  id: `${checkId} 1`,
  startedAt: '2026-01-02T00:00:00.000Z',
  endedAt: '2026-01-02T00:01:00.000Z',
  checkId,
  checkTitle: checkId,
  part: 'motor',
  car: 'Marmot',
  partName: marmotCar.motor.name,
  rig: '0007',
  results,
  ...more,
});
const content = (runs: RunSummary[], notes = '', car = marmotCar) =>
  sheetContent({ car, runs, occasion: 'Quarry Lantern 90', notes, madeAt: '2026-01-03T00:00:00.000Z' });

describe('the sheet', () => {
  it('says that nothing was checked where nothing was', () => {
    expect(content([]).sentence).toMatch(/^Nothing was checked/);
    expect(sheetHtml(content([]), null, 'A4')).toContain('Nothing to note.');
  });
  it('leaves out runs of a part that is not in the car, runs that never ended and older runs', () => {
    const other = run('a', [result('x', 'pass')], { partName: 'Another motor' });
    const torn = run('b', [result('x', 'pass')], { endedAt: undefined });
    const older = run('c', [result('old', 'fail')], { id: 'old', startedAt: '2026-01-01T00:00:00.000Z' });
    const newer = run('c', [result('new', 'pass')]);
    expect(content([other, torn, older, newer]).rows.map(({ checked }) => checked)).toEqual(['Title of new']);
  });
  it('shows the worst result of a check and notes it', () => {
    const { rows, notes, sentence } = content([run('a', [result('x', 'pass'), result('y', 'fail')])]);
    expect(rows[0]).toMatchObject({ checked: 'Title of y', verdict: 'fail' });
    expect(notes[0]).toMatch(/^Title of y fails: 2.31/);
    expect(sentence).toBe('Not ready: 1 of 1 checks fails');
  });
  it('tells how many were made when all pass, and what was not looked at; else it is not settled', () => {
    const passes = content([run('a', [result('x', 'pass')])]);
    expect(passes.sentence).toBe('The one check that was made passes');
    expect(passes.unchecked).toEqual([
      'Servo',
      'Controller',
      'Pack',
      'Radio',
      'Leads and joints',
      'Drive train',
    ]);
    expect(sheetHtml(passes, null, 'A4')).toContain('servo, controller, pack, radio');
    expect(content([run('a', [result('x', 'undecided')])]).sentence).toMatch(/^Not settled/);
    const none = result('x', 'not measured', { value: undefined, interval: undefined });
    expect(content([run('a', [none])]).rows[0].value).toBe('none');
  });
  it('has gearing where the car has a drive train', () => {
    const drive = {
      kind: 'drive',
      name: 'd',
      pinionTeeth: 24,
      spurTeeth: 84,
      internalRatio: 2.6,
      tyreDiameterM: 0.083,
    } as const;
    expect(content([], '', { ...marmotCar, drive }).setUp).toContainEqual({
      what: 'Gearing',
      value: '24 on 84, 9.10 : 1',
    });
    expect(content([]).setUp.map(({ what }) => what)).not.toContain('Gearing');
  });
  it('escapes what people typed', () => {
    const html = sheetHtml(
      content([], '<script>x</script>', { ...marmotCar, name: 'M & "M"' }),
      null,
      'letter',
    );
    expect(html).not.toContain('<script>');
    expect(html).toContain('M &amp; &quot;M&quot;');
    expect(html).toContain('size:letter portrait');
  });
  it('shows when the value of today was set, not one of before', () => {
    const at = (day: string, timingDegrees: number) =>
      ({ what: 'timing', figures: { timingDegrees }, at: `2026-01-${day}T12:00:00.000Z` }) as const;
    const motor = { ...marmotCar.motor, timingDegrees: 30 };
    const html = sheetHtml(
      content([], '', { ...marmotCar, motor, setUp: [at('01', 20), at('02', 30)] }),
      null,
      'A4',
    );
    expect(html).toMatch(/Timing, end bell.*30°.*set 2 Jan 2026/);
    expect(html).not.toContain('1 Jan 2026');
  });
  it('leaves no check out, and sets many closer', () => {
    const many = content(Array.from({ length: 26 }, (_, k) => run(`c${k}`, [result('x', 'pass')])));
    expect(many.rows).toHaveLength(26);
    expect(sheetHtml(many, null, 'A4')).toContain('<body class="dense">');
  });
});
describe('the result that has a chart', () => {
  const rows = (...results: ResultLine[]) => content(results.map((each, k) => run(`c${k}`, [each]))).rows;
  it('is the worst, even where a pass is nearer to its limit', () =>
    expect(
      chartedRow(rows(result('near', 'pass', { value: 3.39 }), result('bad', 'undecided')))?.checked,
    ).toBe('Title of bad'));
  it('is the nearest to its limit of those that pass', () => {
    const between = { limit: { min: 1, max: 3, unit: 'A', kind: 'rating', source: 'label' } } as const;
    const found = rows(
      result('far', 'pass', { value: 1 }),
      result('half way', 'pass', { value: 1.5, ...between }),
      result('near', 'pass', { value: 3.3 }),
    );
    expect(chartedRow(found)?.checked).toBe('Title of near');
  });
  it('is none without figures', () =>
    expect(
      chartedRow(rows(result('x', 'not measured', { value: undefined, interval: undefined }))),
    ).toBeUndefined());
});
describe('the chart of the sheet', () => {
  const series = (value: number[]) => ({
    timeS: Float64Array.from(value, (_, k) => k),
    value: Float64Array.from(value),
    clipped: 0,
    lost: 0,
  });
  it('is none for fewer than two values', () =>
    expect(chartSvg({ title: 't', unit: 'V', series: series([1]) })).toBeNull());
  it('keeps the lowest and highest value of each column', () => {
    const spike = Array.from({ length: 1600 }, (_, k) => (k === 803 ? 9 : 1));
    const svg = chartSvg({ title: 'Rail', unit: 'V', series: series(spike) })!;
    expect(svg).toContain('aria-label="Rail, V, over 1599 s"');
    // 9 of 1 to 9 with 8 % room, 92 high from 100: 14.4, less 0.8 for the line.
    expect(svg).toMatch(/M\S+ 93\.7V13\.5/);
  });
});
