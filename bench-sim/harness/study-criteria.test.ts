// SPDX-License-Identifier: MIT
import { describe, expect, it } from 'vitest';
import { allMet, criteriaOf } from './study-criteria.ts';
import { compatibilities, type DecisionCount } from './study-decisions.ts';
import { shareOf } from './study-summary.ts';

/** A result whose interval missed the truth in `missed` of `of` cells; each miss is one wrong pass and one undecided. */
const decided = (id: string, missed: number, of: number): DecisionCount => ({
  id,
  atLimit: 2 * of,
  atLimitPassed: missed,
  inside: 2 * of,
  insideUndecided: missed,
  compatible: compatibilities([[of - missed, of]])[0],
});
const metOf = (missed: number, of: number) =>
  criteriaOf(shareOf(of - missed, of), [decided('drop', missed, of)]).map(({ met }) => met);

describe('the criteria of a study', () => {
  it('says yes four times to intervals that hold the truth in 95.5 % of 1000 cells', () =>
    expect(metOf(45, 1000)).toEqual(['yes', 'yes', 'yes', 'yes']));
  it('says no to intervals that are too narrow, result by result, over all, and at the limit', () =>
    expect(metOf(100, 1000)).toEqual(['no', 'no', 'no', 'yes']));
  it('says no to intervals that are too wide', () =>
    expect(metOf(1, 1000)).toEqual(['no', 'no', 'yes', 'yes']));
  it('leaves few cells open that more of them could put inside', () =>
    expect(metOf(2, 20)).toEqual(['yes', 'too few to tell', 'too few to tell', 'yes']));
  it('sees one bad result among many good ones', () => {
    const good = Array.from({ length: 9 }, (_, k) => decided(`good ${k}`, 45, 1000));
    const all = [...good, decided('bad', 150, 1000)];
    const [results, pooled, atLimit] = criteriaOf(shareOf(9445, 10000), all);
    expect(results.found).toMatch(/^bad too few inside, p = /);
    expect([results.met, pooled.met, atLimit.met]).toEqual(['no', 'yes', 'no']);
    expect(atLimit.found).toContain('most: bad 7.5 %');
  });
  it('does not count what is open as not met', () => {
    const criterion = { words: '', found: '' };
    expect(allMet([{ ...criterion, met: 'too few to tell' }])).toBe(true);
    expect(allMet([{ ...criterion, met: 'no' }])).toBe(false);
  });
});
