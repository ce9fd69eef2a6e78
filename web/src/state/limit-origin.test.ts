// SPDX-License-Identifier: MIT
// What is told of a limit besides its bound.
import { describe, expect, it } from 'vitest';
import type { Limit } from '#core/verdicts/limit';
import { limitOrigin, tellsMore } from './limit-origin.ts';

const plain: Limit = { max: 0.035, unit: 'ohm', kind: 'common practice', source: 'any: warm; from memory' };
describe('the origin of a limit', () => {
  it('is kind, bound and source, and no more where no more is known', () => {
    const origin = limitOrigin(plain, 0.02);
    expect(origin).toMatchObject({
      kind: 'Common practice, no source',
      range: 'at most 35\u00a0mΩ',
      source: 'Any: warm; from memory.',
    });
    expect(tellsMore(origin)).toBe(false);
  });
  it('tells its doubt as a half-width: a standard uncertainty of 5 % is 9 % to either side', () =>
    expect(limitOrigin({ ...plain, doubt: { words: 'by a model', share: 0.05 } }, 1).doubt).toMatch(
      /Known to ±\u00a09\u00a0% itself: by a model/,
    ));
  it('tells what it displaced and what was refused', () => {
    const origin = limitOrigin({ ...plain, displaced: ['rating, at most 1 A: label'], refused: ['No.'] }, 1);
    expect(origin.displaced).toEqual(['Rating, at most 1 A: label.']);
    expect(origin.refused).toEqual(['No.']);
    expect(tellsMore(origin)).toBe(true);
  });
});
