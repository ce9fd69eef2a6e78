// SPDX-License-Identifier: MIT
import { describe, expect, it } from 'vitest';
import type { Limit } from '#core/verdicts/limit';
import { verdictPicture, type VerdictPicture } from './verdict-picture.ts';

const limit = (bounds: { min?: number; max?: number }): Limit =>
  ({ unit: 'V', kind: 'common practice', source: 'invented', ...bounds }) as Limit;
const numbers = ({ zones, posts, guards, ticks, bead, from, to }: VerdictPicture) => [
  ...zones.flatMap(({ x, width }) => [x, width]),
  ...[...posts, ...guards, ...ticks].map(({ x }) => x),
  bead,
  from,
  to,
];

describe('the picture of a verdict', () => {
  it('stands left to right as the numbers do', () => {
    const picture = verdictPicture(6.1, [6.0, 6.2], limit({ min: 5.5, max: 6.5 }));
    const [low, high] = picture.posts;
    expect(low.x).toBeLessThan(picture.from);
    expect(picture.from).toBeLessThan(picture.bead);
    expect(picture.bead).toBeLessThan(picture.to);
    expect(picture.to).toBeLessThan(high.x);
    expect(picture.off).toBe(null);
  });
  it.each([
    [0, limit({ max: 0 })],
    [3, limit({ max: 0 })],
    [0, limit({ min: 0 })],
    [2, limit({ min: 2, max: 2 })],
  ])('is drawn for a count of %d without width', (value, bounds) =>
    expect(numbers(verdictPicture(value, [value, value], bounds)).every(Number.isFinite)).toBe(true),
  );
  it('says on which side a far value lies', () => {
    const far = verdictPicture(90, [89, 91], limit({ max: 6 }));
    expect(far.off).toBe('right');
    expect([far.from, far.to], 'no interval is drawn').toEqual([far.bead, far.bead]);
    expect(verdictPicture(-90, [-91, -89], limit({ min: 5, max: 6 })).off).toBe('left');
  });
});
