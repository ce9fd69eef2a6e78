// SPDX-License-Identifier: MIT
// A stop at a known place and servos of many steepnesses: the knee must come back within its own doubt.
import { describe, expect, it } from 'vitest';
import { kneeOf, type KneePoint } from './knee.ts';

const stopUs = 300;
const freeA = 0.02;
const risen = (outUs: number, s: number) => Math.max(freeA, (s * Math.max(0, outUs - stopUs)) ** 2);
/** Steps of 5 us from `phase` past the first, as far as the search goes. */
function pointsOf(s: number, phase: number, farA = 0.05): KneePoint[] {
  const points: KneePoint[] = [];
  for (let outUs = stopUs - 30 + phase; ; outUs += 5) {
    points.push({ outUs, risenA: risen(outUs, s) });
    if (risen(outUs, s) > farA) return points;
  }
}
describe('the knee', () => {
  it.each([0.02, 0.026, 0.034])('is found within 5 us, %f root amperes a us', (s) => {
    for (let phase = 0; phase < 5; phase += 0.7) {
      const knee = kneeOf(pointsOf(s, phase), freeA);
      expect(Math.abs(knee.outUs - stopUs)).toBeLessThan(5);
      expect(knee.u).toBeGreaterThan(0.3);
    }
  });
  it('is not moved by a servo that draws by fits and starts before it', () => {
    const uneven = pointsOf(0.026, 1).map((point, k) =>
      point.outUs < stopUs ? { ...point, risenA: k % 2 === 0 ? 0 : 2 * freeA } : point,
    );
    expect(Math.abs(kneeOf(uneven, freeA).outUs - stopUs)).toBeLessThan(5);
  });
  it('is surer the further the servo was pressed', () =>
    expect(kneeOf(pointsOf(0.026, 2, 0.2), freeA).u).toBeLessThan(kneeOf(pointsOf(0.026, 2), freeA).u));
});
