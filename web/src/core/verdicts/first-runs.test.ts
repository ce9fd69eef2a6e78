// SPDX-License-Identifier: MIT
// A result against its part's own first runs: errors of one rig fall out, by hand. x (1 + g) <= c (1 + g) 1.25 does not
// hang on g at all; x + o <= 1.25 (c + o) leaves 0.25 o. And a rate of wrong verdicts over simulated rigs.
import { describe, expect, it } from 'vitest';
import { seededRandom } from '#sim/seeded-random';
import { baselineLimit, baselineOf } from '../history/baseline.ts';
import { budgetLine, measuredAs, pointOf } from '../history/history-fixture.ts';
import { halfWidth } from '../measurements/coverage-interval.ts';
import type { BudgetLine } from '../measurements/measurement.ts';
import { heldAgainst } from './first-runs.ts';
import { judge } from './judge.ts';
import type { Limit } from './limit.ts';

const key = 'motor-no-load/no-load-current';
const gain = (u: number, change: Partial<BudgetLine> = {}) =>
  budgetLine('gain of packCurrentNarrow', u, change);
const noise = (u: number) => budgetLine('noise', u, { shape: 'normal' });
/** Five runs of 3 A on rig 17 with that budget; the limit lies at 3.75 A. */
function limitOf(budget: readonly BudgetLine[], rigSerial = '17'): Limit {
  const points = Array.from({ length: 5 }, (_, i) =>
    pointOf(3, i, { rigSerial, finding: measuredAs(3, budget) }),
  );
  const answer = baselineOf(key, points);
  if (!answer.ready) throw new Error(answer.words);
  return baselineLimit(answer.baseline);
}
const lineOf = (budget: readonly BudgetLine[], source: string) =>
  budget.find((line) => line.source === source)?.u ?? 0;

describe('on the rig of the first runs', () => {
  const first = [gain(0.03), budgetLine('offset of packCurrentNarrow', 0.04), noise(0.01)];
  const later = measuredAs(3.7, [gain(0.037), budgetLine('offset of packCurrentNarrow', 0.04), noise(0.01)]);
  const held = heldAgainst(later, limitOf(first), '17');
  it('a gain falls out of the comparison', () =>
    expect(lineOf(held.finding.budget, 'gain of packCurrentNarrow')).toBeCloseTo(0.03 * 1.25 - 0.037, 9));
  it('a quarter of an offset is left, as the bound is a quarter above the mean', () =>
    expect(lineOf(held.finding.budget, 'offset of packCurrentNarrow')).toBeCloseTo(0.01, 9));
  it('noise is of each run and stays', () => expect(lineOf(held.finding.budget, 'noise')).toBe(0.01));
  it('decides what the whole budget could not, and says what was left out', () => {
    const limit = limitOf([gain(0.03)]);
    const near = measuredAs(3.7, [gain(0.037), noise(0.01)]);
    expect(judge(near, { ...limit, firstRuns: undefined }).verdict).toBe('undecided');
    const { verdict, note } = judge(near, limit, { rigSerial: '17' });
    expect(verdict).toBe('pass');
    expect(note).toMatch(
      /Watch it.*own first runs on this rig: what both share is left out of the doubt \(gain of packCurrentNarrow\)/,
    );
  });
});
describe('on another rig, or after a calibration', () => {
  const limit = limitOf([gain(0.03)]);
  const later = measuredAs(3.7, [gain(0.037), noise(0.01)]);
  it.each([
    ['another number', '18', later],
    ['no number', '', later],
    [
      'a calibration between',
      '17',
      measuredAs(3.7, [gain(0.037, { origin: 'calibration of 2026-11-08' }), noise(0.01)]),
    ],
  ])('both gains count: %s', (_, rigSerial, finding) => {
    const held = heldAgainst(finding, limit, rigSerial);
    expect(lineOf(held.finding.budget, 'gain of packCurrentNarrow')).toBe(0.037);
    expect(lineOf(held.finding.budget, 'gain of packCurrentNarrow, in the first runs')).toBeCloseTo(
      0.0375,
      9,
    );
    expect(held.words).toMatch(/another rig or before a calibration: the errors of both count in full/);
    expect(judge(finding, limit, { rigSerial }).verdict).toBe('undecided');
  });
  it('a rig without a number is never the same, not even as itself', () =>
    expect(heldAgainst(later, limitOf([gain(0.03)], ''), '').words).toMatch(/count in full/));
});
it('leaves a limit of another kind, and a baseline from before rigs were kept, as they are', () => {
  const finding = measuredAs(3.7, [gain(0.037)]);
  const { firstRuns: _, ...old } = limitOf([gain(0.03)]);
  expect(heldAgainst(finding, old, '17')).toEqual({ finding });
  expect(judge(finding, old, { rigSerial: '17' }).note ?? '').not.toMatch(/first runs on this rig/);
});
it('leaves out of a baseline what was calibrated between its runs', () => {
  const points = [0, 1, 2, 3, 4].map((i) =>
    pointOf(3, i, {
      finding: measuredAs(3, [gain(0.03, i > 2 ? { origin: 'calibration of 2026-11-03' } : {})]),
    }),
  );
  const answer = baselineOf(key, points);
  expect(answer.ready && answer.baseline.rigErrors).toEqual([]);
});
it('passes a part at its limit in at most 2.5 of 100 rigs, whatever their gain', () => {
  const random = seededRandom(5, 'first runs');
  const rigs = 800;
  let passed = 0;
  for (let k = 0; k < rigs; k++) {
    const shown = 1 + 0.01 * Math.sqrt(3) * random.between(-1, 1);
    const budget = (value: number) => [gain(0.01 * value), noise(0.01)];
    const points = [0, 1, 2, 3, 4].map((i) =>
      pointOf(3 * shown, i, { finding: measuredAs(3 * shown, budget(3 * shown)) }),
    );
    const answer = baselineOf(key, points);
    if (!answer.ready) throw new Error(answer.words);
    const value = 3.75 * shown + 0.01 * random.gaussian();
    const limit = baselineLimit(answer.baseline);
    const { finding } = heldAgainst(measuredAs(value, budget(value)), limit, '17');
    // One bound: at most 2.5 % beyond it is half of 5 % on both sides together.
    if (halfWidth(finding.budget) <= limit.max! - value) passed++;
  }
  // 4 standard deviations of 2.5 % in 800: 2.2 %.
  expect(passed / rigs).toBeLessThan(0.025 + 0.022);
  expect(passed / rigs).toBeGreaterThan(0.003);
});
