// SPDX-License-Identifier: MIT
// A trend in the chosen unit: its words and figures are told in it, what it decides does not hang on it. 20 C are 68 F,
// 5 K are 9 F by the definition F = 1.8 C + 32.
import { afterEach, describe, expect, it } from 'vitest';
import { budgetLine, measuredAs, runOf } from '#core/history/history-fixture';
import { marmot } from './shelf.svelte.ts';
import { partTrend } from './part-trend.ts';
import { shownFindings } from './shown-findings.ts';
import { trendPlot } from './trend-plot.ts';
import { UnitsChoice } from './units-choice.svelte.ts';

const kept = (temperature: string) => ({ getItem: () => temperature, setItem: () => {} });
const inFahrenheit = () => void new UnitsChoice(kept('fahrenheit'));
afterEach(() => void new UnitsChoice(kept('')));

const key = 'motor-no-load/no-load-current';
const runs = [20, 20.3, 19.8, 20.1, 19.9, 26, 32, 38].map((value, i) =>
  runOf(value, i, { findings: [measuredAs(value, [budgetLine('gain', 0.1)], 'C')] }),
);
const part = { partName: runs[0].partName };
const trend = () => partTrend({ runs, part, key, repairs: [], car: marmot, holds: null });

it('a finding is told in the shown unit with its interval and budget', () => {
  inFahrenheit();
  const [finding] = shownFindings(runs, key)[0].findings;
  expect(finding).toMatchObject({ unit: '°F', value: expect.closeTo(68, 9), u: expect.closeTo(0.18, 9) });
});
it('a result that was never measured is left as it is', () =>
  expect(shownFindings(runs, 'motor-no-load/kv')).toEqual(runs));

describe('a trend', () => {
  it('speaks the chosen unit, and so do its figures, limits and ticks', () => {
    inFahrenheit();
    const told = trend().words.join(' ');
    expect(told).toContain('°F');
    expect(told).not.toContain('°C');
    const plot = trendPlot(trend(), 'C', { max: 40 })!;
    expect(plot.unit).toBe('°F');
    expect(plot.rows[0].value).toBe('68.0\u00a0±\u00a01.8\u00a0°F');
    expect(plot.limits[0].text).toBe('limit 104.0');
    expect(plot.yTicks.every(({ text }) => Number(text) % 5 === 0)).toBe(true);
  });
  it('finds the same runs outside whatever is chosen, and draws the dots at the same places', () => {
    const [usual, dots] = [trend(), trendPlot(trend(), 'C', null)!.dots];
    inFahrenheit();
    expect(trend().drift?.outside).toEqual(usual.drift?.outside);
    expect(trend().offer?.baseline).toEqual(usual.offer?.baseline);
    expect(trendPlot(trend(), 'C', null)!.dots).toEqual(dots);
  });
});
