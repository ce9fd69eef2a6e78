// SPDX-License-Identifier: MIT
// A part's history, its cuts at repairs, its baseline and the limit that follows. Chart figures after the handbook
// example (e-Handbook 6.3.2.2); allowances are the project's own, from memory.
import { describe, expect, it } from 'vitest';
import { baselineLimit, baselineOf, baselineSchema, type Baseline } from './baseline.ts';
import { pointOf, pointsOf, runOf } from './history-fixture.ts';
import { historyOf, type Repair } from './part-history.ts';

const key = 'motor-no-load/no-load-current';
const part = 'Gravel Wren 13.5';
const values = (points: readonly { finding: { value: number } }[]) =>
  points.map(({ finding }) => finding.value);

describe('history', () => {
  const runs = [3, 3.1, 3.2, 3.3].map((value, i) => runOf(value, i));
  it('follows the part, in order of time, whatever order the runs come in', () =>
    expect(values(historyOf(runs.toReversed(), { partName: part }, key)[0].points)).toEqual([
      3, 3.1, 3.2, 3.3,
    ]));
  it.each([
    ['of another part', { partName: 'Spare motor' }],
    ['of another check', { checkId: 'rail-sag' }],
    ['that failed', { verdicts: { 'no-load-current': 'fail' as const } }],
    [
      'that measured nothing',
      {
        findings: [
          { measured: false as const, id: 'no-load-current', title: '', unit: 'A', reason: 'a gap' },
        ],
      },
    ],
  ])('leaves out a run %s', (_, change) =>
    expect(values(historyOf([...runs, runOf(9, 5, change)], { partName: part }, key)[0].points)).toEqual([
      3, 3.1, 3.2, 3.3,
    ]),
  );
  it('leaves out runs that hold at another voltage than the last one', () => {
    const at = (i: number, condition: string) =>
      runOf(3 + i / 10, i, { findings: [{ ...pointOf(3 + i / 10, i).finding, condition }] });
    const mixed = [at(0, '11.1 V'), at(1, '7.4 V'), at(2, '11.1 V'), at(3, '7.4 V')];
    expect(values(historyOf(mixed, { partName: part }, key)[0].points)).toEqual([3.1, 3.3]);
  });
  const repair: Repair = { partName: part, at: '2026-11-03', words: 'new bearings' };
  it('breaks at a noted repair: runs from then on begin anew', () => {
    const cut = historyOf(runs, { partName: part }, key, [repair]);
    expect(cut.map(({ since, points }) => [since?.words ?? null, values(points)])).toEqual([
      [null, [3, 3.1]],
      ['new bearings', [3.2, 3.3]],
    ]);
  });
  it('counts a run at the very moment of the repair as after it', () => {
    const at = pointOf(0, 2).at;
    expect(
      historyOf(runs, { partName: part }, key, [{ ...repair, at }]).map(({ points }) => points.length),
    ).toEqual([2, 2]);
  });
  it('takes no notice of another part’s repair', () =>
    expect(historyOf(runs, { partName: part }, key, [{ ...repair, partName: 'Spare motor' }])).toHaveLength(
      1,
    ));
  it('breaks at two repairs in order, however they are listed', () => {
    const earlier = { ...repair, at: '2026-11-02T00:00:00Z', words: 'new rotor' };
    const cut = historyOf(runs, { partName: part }, key, [repair, earlier]);
    expect(cut.map(({ points }) => values(points))).toEqual([[3], [3.1], [3.2, 3.3]]);
  });
});
describe('baseline', () => {
  const batches = [49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1];
  const of = (...given: number[]): Baseline => {
    const answer = baselineOf(key, pointsOf(...given), given.length);
    if (!answer.ready) throw new Error(answer.words);
    return answer.baseline;
  };
  it('is of the first five runs only, with their ids and dates', () => {
    const answer = baselineOf(key, pointsOf(3, 3.1, 3, 3.1, 3, 99));
    expect(answer).toMatchObject({
      ready: true,
      baseline: {
        centre: expect.closeTo(3.04, 12),
        sigma: expect.closeTo(0.1 / 1.128, 12),
        runIds: ['run-0', 'run-1', 'run-2', 'run-3', 'run-4'],
        fromDate: '2026-11-01',
        toDate: '2026-11-05',
        rigSerial: '17',
      },
    });
    expect(answer.ready && baselineSchema.safeParse(answer.baseline).success).toBe(true);
  });
  it('of the handbook’s ten batches has its limits, where no allowance is wider', () => {
    const limit = baselineLimit({ ...of(...batches), checkResultId: 'rail-sag/deepest-dip' });
    expect(limit.min).toBeCloseTo(45.8159, 4);
    expect(limit.max).toBe(undefined);
    expect(limit).toMatchObject({ kind: 'baseline', source: expect.stringContaining('three spreads') });
  });
  it('of quiet runs takes the allowance: +25 %, watched from +15 %', () => {
    const limit = baselineLimit(of(3, 3.01, 3, 3.01, 3));
    expect(limit.max).toBeCloseTo(3.004 * 1.25, 10);
    expect(limit.warnMax).toBeCloseTo(3.004 * 1.15, 10);
    expect(limit.min).toBe(undefined);
    expect(limit.source).toMatch(/first 5 runs, 2026-11-01 to 2026-11-05, 25 %.*no source/);
  });
  it('of restless runs is never inside their own scatter', () => {
    const limit = baselineLimit(of(2, 4, 2, 4, 2));
    expect(limit.max).toBeCloseTo(2.8 + (3 * 2) / 1.128, 10);
    expect(limit.max!).toBeGreaterThanOrEqual(limit.warnMax!);
  });
  it('never asks a resistance to be above 0', () =>
    expect(baselineLimit({ ...of(2, 4, 2, 4, 2), checkResultId: 'rail-sag/deepest-dip' }).min).toBe(
      undefined,
    ));
  it('waits until there are enough, and says how many', () =>
    expect(baselineOf(key, pointsOf(3, 3.1))).toEqual({
      ready: false,
      words: '2 of the 5 runs that make a baseline. 3 more, none of them failed.',
    }));
  it('keeps what its runs hold at', () => {
    const points = pointsOf(3, 3.1, 3, 3.1, 3).map((point) => ({
      ...point,
      finding: { ...point.finding, condition: '7.4 V' },
    }));
    const answer = baselineOf(key, points);
    expect(answer.ready && answer.baseline.condition).toBe('7.4 V');
  });
  it('is of one rig', () => {
    const mixed = [...pointsOf(3, 3.1, 3, 3.1), pointOf(3, 4, { rigSerial: '18' })];
    expect(baselineOf(key, mixed)).toMatchObject({ ready: false, words: expect.stringContaining('one rig') });
  });
});
