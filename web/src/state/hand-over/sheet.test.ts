// SPDX-License-Identifier: MIT
// The sheet says what was measured and nothing else: parts of the car as it is now, worst result of each check, all
// that was typed escaped.
import { describe, expect, it } from 'vitest';
import { marmotCar } from '#core/parts/marmot-fixture';
import type { ResultLine, RunSummary } from '../run-summary.ts';
import { chartSvg } from './sheet-chart.ts';
import { mostRows, sheetContent } from './sheet-content.ts';
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
    expect(sentence).toBe('Not ready: 1 of 1 checks fail');
  });
  it('is ready only when all pass, else not settled', () => {
    expect(content([run('a', [result('x', 'pass')])]).sentence).toMatch(/^Ready/);
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
    expect(content([], '', { ...marmotCar, drive }).setUp).toContainEqual(['Gearing', '24 on 84, 9.10 : 1']);
    expect(content([]).setUp.map(([what]) => what)).not.toContain('Gearing');
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
  it('keeps to one page of rows', () =>
    expect(
      content(Array.from({ length: 40 }, (_, k) => run(`c${k}`, [result('x', 'pass')]))).rows,
    ).toHaveLength(mostRows));
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
