// SPDX-License-Identifier: MIT
// How numbers are shown. The digits of an uncertainty follow common practice (no source): one significant digit,
// two while it begins with 1 or 2; the value goes to the same place (JCGM 100:2008, 7.2.6).
import { describe, expect, it } from 'vitest';
import { ageWords, figure, isOld, reading, readingWords } from './figures.ts';
import { niceSteps, stepDecimals, verdictPicture } from './verdict-picture.ts';

describe('a reading', () => {
  it('gives value and uncertainty the same decimals', () => {
    expect(readingWords(2.3149, [2.2549, 2.3749], 'A')).toBe('2.31\u00a0±\u00a00.06\u00a0A');
    expect(readingWords(0.0352, [0.0331, 0.0373], 'ohm')).toBe('35.2\u00a0±\u00a02.1\u00a0mΩ');
  });
  it('says a lopsided interval by its ends', () => {
    expect(reading(1.2, [1.19, 1.5], 'V').plusMinus).toBeNull();
  });
  it('groups thousands and uses a real minus', () => {
    expect(figure(21640, 0)).toBe('21\u202f640');
    expect(figure(-0.35, 2)).toBe('\u22120.35');
    expect(figure(-0.001, 2)).toBe('0.00');
  });
});
describe('an age', () => {
  const day = 86_400_000;
  it('is old after 21 days, not before', () => {
    expect(isOld(0, 21 * day)).toBe(false);
    expect(isOld(0, 21 * day + 1)).toBe(true);
    expect(ageWords(0, 12 * 60_000)).toBe('12 min ago');
  });
});
describe('the verdict picture', () => {
  const limit = { min: 4, unit: 'V', kind: 'common practice', source: 'none' } as const;
  it('puts bad side, guard band and good side in order, the guard twice the uncertainty wide', () => {
    const picture = verdictPicture(4.07, [3.98, 4.16], limit);
    expect(picture.zones.map(({ kind }) => kind)).toEqual(['bad', 'guard', 'good']);
    expect(picture.zones[1].width).toBeCloseTo(picture.to - picture.from, 6);
    expect(picture.posts[0].x).toBeCloseTo(picture.zones[1].x + picture.zones[1].width / 2, 6);
    expect(picture.off).toBeNull();
  });
  it('puts a far value at the edge and says so', () => {
    expect(verdictPicture(400, [399, 401], limit).off).toBe('right');
  });
  it.each([
    [0.5, 1],
    [0.2, 1],
    [0.05, 2],
    [1, 0],
    [20, 0],
  ])('tells steps of %s apart with %i decimals', (step, decimals) =>
    expect(stepDecimals(step)).toBe(decimals),
  );
  it('ticks at round steps', () => {
    expect(niceSteps(3.6, 4.6).every((step) => Math.abs(step * 5 - Math.round(step * 5)) < 1e-9)).toBe(true);
  });
});
