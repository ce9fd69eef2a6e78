// SPDX-License-Identifier: MIT
// Steady or not, on made-up values worked out by hand.
import { describe, expect, it } from 'vitest';
import { steadyReading, steadyWords } from './steady-reading.ts';

const range = { low: 0, high: 10 };
/** One value every 100 ms up to now. */
const seen = (values: readonly number[], nowMs = 10_000) =>
  values.map((value, i) => ({ value, atMs: nowMs - 100 * (values.length - 1 - i) }));
const read = (values: readonly number[]) => steadyReading(seen(values), range, 10_000);

describe('a tap', () => {
  it('that was never seen, or not lately, is not seen', () => {
    expect(steadyWords(steadyReading([], range, 0))).toBe('not seen');
    expect(steadyWords(steadyReading(seen([3.9]), range, 10_700))).toBe('not seen');
  });
  it('that jumped half a second ago is moving', () =>
    expect(steadyWords(read([7, 7, 7, 3.9, 3.9, 3.9, 3.9, 3.9]))).toBe('moving, wait'));
  it('is steady since its last jump, noise of the band aside, with the mean of the last second', () => {
    const noisy = Array.from({ length: 31 }, (_, i) => 3.9 + (i % 2 ? 0.02 : -0.02));
    const found = read([7, 7, ...noisy]);
    expect(found.steadyS).toBeCloseTo(3, 9);
    expect(found.value).toBeCloseTo(3.9, 9);
    expect(steadyWords(found)).toBe('steady for 3\u00a0s');
  });
});
