// SPDX-License-Identifier: MIT
// A stop at a known place and servos of many steepnesses: the knee must come back within its own doubt.
import { describe, expect, it } from 'vitest';
import { kneeOf, type KneePoint } from './knee.ts';

const stopUs = 300;
const risen = (outUs: number, s: number) => (s * Math.max(0, outUs - stopUs)) ** 2;
/** Fine steps from `phase` past the coarse one's 46 us back, as far as the search goes. */
function pointsOf(s: number, phase: number): KneePoint[] {
  const coarse = stopUs + 6 + phase;
  const points: KneePoint[] = [{ outUs: coarse, risenA: risen(coarse, s) }];
  for (let outUs = coarse - 46; ; outUs += 4) {
    points.push({ outUs, risenA: risen(outUs, s) });
    if (risen(outUs, s) > 0.03) return points;
  }
}
describe('the knee', () => {
  it('is none where no current rose', () => {
    expect(kneeOf([])).toBeNull();
    expect(kneeOf([{ outUs: 290, risenA: 0.004 }])).toBeNull();
  });
  it.each([0.02, 0.037, 0.07])('is found within 4 us, %f root amperes a us', (s) => {
    for (let phase = 0; phase < 16; phase += 1.3) {
      const knee = kneeOf(pointsOf(s, phase));
      expect(Math.abs((knee?.outUs ?? 0) - stopUs)).toBeLessThan(4);
      expect(knee?.u).toBeGreaterThan(0.3);
    }
  });
  it('is less sure with one pressed step than with two', () => {
    const points = pointsOf(0.037, 8);
    expect(kneeOf(points.slice(1))?.u).toBeGreaterThan(kneeOf(points)?.u ?? 0);
  });
});
