// SPDX-License-Identifier: MIT
// The linkage against its own closed forms: nothing when off, friction and scrub as torque that slides, stops as
// springs, a horn that turns on its spline at the torque it holds.
import { describe, expect, it } from 'vitest';
import { Linkage, stopRad } from './linkage.ts';
import { drawParameters } from './population.ts';

const stepS = 8e-6;
const { linkage: drawn } = drawParameters(1).servo;
const plain = {
  ...drawn,
  shortRad: 0.5,
  longRad: 0.6,
  frictionNm: 0.04,
  scrubNm: 0.2,
  stiffnessNmPerRad: 80,
};
const make = (change: Partial<typeof plain> = {}) => new Linkage({ ...plain, ...change }, stepS);
/** Slowly from one angle to another; the last torque. */
function moved(linkage: Linkage, fromRad: number, toRad: number): number {
  let load = 0;
  for (let k = 0; k <= 2000; k++) load = linkage.loadNm(fromRad + ((toRad - fromRad) * k) / 2000, 0);
  return load;
}
describe('the linkage', () => {
  it('drags with its friction against the way it moves, more on its tyres', () => {
    const linkage = make();
    linkage.hitch('bare', 0);
    expect(moved(linkage, 0, 0.3)).toBeCloseTo(0.04, 9);
    expect(moved(linkage, 0.3, -0.3)).toBeCloseTo(-0.04, 9);
    linkage.hitch('tyres', -0.3);
    expect(moved(linkage, -0.3, 0.3)).toBeCloseTo(0.24, 9);
  });
  it('presses beyond its stop as a spring, and counts for how long', () => {
    const linkage = make();
    linkage.hitch('bare', 0);
    expect(moved(linkage, 0, 0.62)).toBeCloseTo(0.04 + 80 * 0.02, 6);
    expect(linkage.pressedS / stepS).toBeCloseTo((2000 * 0.02) / 0.62, -1);
    expect(moved(linkage, 0.62, -0.53)).toBeCloseTo(-0.04 - 80 * 0.03, 6);
  });
  it('stops earlier with its wheels on', () => {
    for (const side of ['short', 'long'] as const) {
      expect(stopRad(plain, 'droop', side)).toBeCloseTo(stopRad(plain, 'bare', side) - plain.droopRad, 9);
      expect(stopRad(plain, 'tyres', side)).toBe(stopRad(plain, 'compression', side));
    }
  });
  it('lets a loose horn turn at the torque it holds, and keeps where it turned to', () => {
    const linkage = make({ holdsNm: 0.5 });
    linkage.hitch('bare', 0);
    expect(moved(linkage, 0, 0.7)).toBe(0.5);
    expect(linkage.slippedRad).toBeGreaterThan(0.05);
  });
});
