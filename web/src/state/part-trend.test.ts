// SPDX-License-Identifier: MIT
// A part's history as its page tells it, from summaries as the logbook keeps them: the offer of own limits, change and
// drift since then, repairs that break it, virtual runs that never mix.
import { describe, expect, it } from 'vitest';
import { keptSummary, type KeptRun } from './kept-run-fixture.ts';
import { runsOfPart } from './part-runs.ts';
import {
  partTrend,
  runCount,
  withBaseline,
  withoutBaseline,
  worthShowing,
  type TrendOf,
} from './part-trend.ts';
import { Repairs } from './repairs.svelte.ts';
import type { RunSummary } from './run-summary.ts';
import { marmot } from './shelf.svelte.ts';
import { trendPlot } from './trend-plot.ts';

const key = 'motor-no-load/no-load-current';
const partName = marmot.motor.name;
const part = { partName };
const run = (value: number, i: number, more: KeptRun = {}): RunSummary =>
  keptSummary({ id: `run-${i}`, day: i + 1, value, ...more });
const runsOf = (values: readonly number[]) => values.map((value, i) => run(value, i));
function trend(runs: readonly RunSummary[], more: Partial<TrendOf> = {}) {
  const findings = runsOfPart(runs, part, marmot);
  return partTrend({ runs: findings, part, key, repairs: [], car: marmot, holds: null, ...more });
}
const three = [3.0, 3.04, 2.98];
const repair = { partName, at: '2026-11-04', words: 'new bearings' };

describe('the offer of own limits', () => {
  it('is not made of two runs', () => {
    expect(trend(runsOf(three.slice(0, 2)))).toMatchObject({ offer: null, kept: null });
    expect(trend(runsOf(three.slice(0, 2))).words[0]).toMatch(/^2 of the 5 runs/);
  });
  it('is made of three, says that five are usual and what goes first', () => {
    const { offer } = trend(runsOf(three), { holds: 'rating' });
    expect(offer?.words).toBe("3 accepted runs: make them this part's own limits");
    expect(offer?.detail).toMatch(/^They would be .*5 are usual.*The rating on its label goes first/);
  });
  it('counts no failed run and none without its budget', () => {
    const [a, b, c] = runsOf(three);
    const failed = run(3.02, 2, { verdict: 'fail' });
    const bare = { ...c, results: c.results.map(({ budget: _budget, ...line }) => line) };
    expect(trend([a, b, failed, bare]).offer).toBeNull();
  });
  it('is none of runs from two rigs', () => {
    expect(trend([...runsOf(three.slice(0, 2)), run(3, 2, { serial: '18' })]).offer).toBeNull();
  });
  it('taken, holds until it is removed, and is renewed from five', () => {
    const { offer } = trend(runsOf(three));
    const car = withBaseline(marmot, offer!.baseline);
    expect(trend(runsOf(three), { car })).toMatchObject({ offer: null, first: 3 });
    expect(trend(runsOf(three), { car }).kept?.words).toMatch(
      /^Own limits from 3 runs, 2026-11-01 to 2026-11-03/,
    );
    expect(trend(runsOf([...three, 3.01, 3.02]), { car }).offer?.words).toMatch(/^5 accepted runs/);
    expect(trend(runsOf(three), { car: withoutBaseline(car, key) }).kept).toBeNull();
  });
});
describe('after it', () => {
  const car = withBaseline(marmot, trend(runsOf(three)).offer!.baseline);
  it('a change and its U are told, and a step told from scatter', () => {
    const moved = trend(runsOf([...three, 3.6, 3.62]), { car });
    expect(moved.words[0]).toMatch(/^Changed by \+0\.6\d* ± 0\.\d+ A since its first 3 runs/);
    expect(moved.words[1]).toMatch(/^It stepped by \+0\.6 A after run 3.*at most 3\.4 of 100 looks/);
    expect(trend(runsOf([...three, 3.01]), { car }).words[1]).toMatch(/^Scatter only/);
  });
  it('a repair breaks the line, and what was kept of before it no longer counts', () => {
    const broken = trend(runsOf([...three, 3.6, 3.62]), { car, repairs: [repair] });
    expect(broken.segments.map(({ points }) => points.length)).toEqual([3, 2]);
    expect(broken.kept).toBeNull();
    expect(broken.words[0]).toBe('Its history begins anew on 2026-11-04: new bearings.');
  });
  it('what a result holds at goes with it', () => {
    const told = runsOf([3]).map((one) => ({
      ...one,
      results: one.results.map((line) => ({ ...line, condition: '7.4 V' })),
    }));
    expect(runsOfPart(told, part, marmot)[0].findings[0]).toMatchObject({ condition: '7.4 V' });
  });
  it('virtual runs of another car are left out, and never mix with real ones', () => {
    const virtual = (seed: number, name: string) =>
      run(9, 7, { virtual: { seed, faults: {}, truth: {} }, car: { ...marmot, name } });
    const findings = runsOfPart([virtual(7, 'Marmot no. 7'), ...runsOf(three)], part, {
      name: 'Marmot no. 8',
    });
    expect(findings).toHaveLength(3);
    expect(runsOfPart([virtual(7, marmot.name)], part, marmot)[0].rigSerial).toBe('virtual 7');
  });
});
it('what moved is shown before what has more runs and only scatters', () => {
  const car = withBaseline(marmot, trend(runsOf(three)).offer!.baseline);
  const moved = trend(runsOf([...three, 3.6, 3.62]), { car });
  const calm = trend(runsOf([...three, 3.01, 2.99, 3.02, 3.0]), { car });
  expect(runCount(moved)).toBe(5);
  expect(worthShowing(moved)).toBeGreaterThan(worthShowing(calm));
});
describe('its picture', () => {
  const car = withBaseline(marmot, trend(runsOf(three)).offer!.baseline);
  it('is none before the first run', () => expect(trendPlot(trend([]), 'A', null)).toBeNull());
  it('has hollow dots that made the limits, one outside, band, limit and ranges', () => {
    const plot = trendPlot(trend(runsOf([...three, 3.6]), { car }), 'A', { max: 3.9 })!;
    expect(plot.dots.map(({ look }) => look)).toEqual(['hollow', 'hollow', 'hollow', 'out']);
    expect(plot.dots[3].y).toBeLessThan(plot.band!.y);
    expect(plot.limits).toHaveLength(1);
    expect(plot.limits[0].y).toBeLessThan(plot.dots[3].y);
    // Moving ranges 0.04, 0.06 and 0.62: D4 of 3.267 times their first two's mean is 0.16.
    expect(plot.ranges!.bars.map(({ out }) => out)).toEqual([false, false, true]);
    expect(plot.ranges!.limitWords).toMatch(/^0\.16/);
  });
  it('breaks its line at a repair and says what was done', () => {
    const plot = trendPlot(trend(runsOf([...three, 3.6, 3.62]), { repairs: [repair] }), 'A', null)!;
    expect(plot.lines.filter((line) => line !== '')).toHaveLength(2);
    expect(plot.repairs).toMatchObject([{ words: 'new bearings' }]);
    expect(plot.repairs[0].x).toBeGreaterThan(plot.dots[2].x);
    expect(plot.repairs[0].x).toBeLessThan(plot.dots[3].x);
  });
});
describe('repairs', () => {
  const memory = () => {
    const kept = new Map<string, string>();
    return {
      getItem: (at: string) => kept.get(at) ?? null,
      setItem: (at: string, value: string) => void kept.set(at, value),
    };
  };
  it.each([
    ['no words', { ...repair, words: '' }, /say in a few words/],
    ['no day', { ...repair, at: '4 Nov' }, /year-month-day/],
    ['a day to come', { ...repair, at: '2026-12-01' }, /still to come/],
  ])('with %s are not noted', (_what, given, words) =>
    expect(new Repairs(memory()).note(given, '2026-11-27')).toMatch(words),
  );
  it('are kept, found by their part, one a day, and can be taken out', () => {
    const place = memory();
    const repairs = new Repairs(place);
    expect(repairs.note(repair, '2026-11-27')).toBeNull();
    expect(repairs.note(repair, '2026-11-27')).toMatch(/already/);
    expect(new Repairs(place).of(part)).toEqual([repair]);
    repairs.remove(repairs.list[0]);
    expect(new Repairs(place).list).toEqual([]);
  });
});
