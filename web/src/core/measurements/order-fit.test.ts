// SPDX-License-Identifier: MIT
// Orders of a made-up signal against a general FFT library (tests/outside), and of a speed against the times at which
// marks truly pass, found by stepping the angle.
import { describe, expect, it } from 'vitest';
import { markedSpeed, orderFit } from './order-fit.ts';
import { seededNoise } from './seeded-noise-fixture.ts';

/** Times at which marks pass while the speed is 300 rad/s and a ripple of order `order`. */
function marksOf(order: number, ripple: number, phaseRad: number, marks: readonly number[], turns: number) {
  const times: number[] = [];
  const h = 1e-6;
  let angle = 0;
  for (let t = 0, next = 0; next < marks.length * turns; t += h) {
    const speed = 300 + ripple * Math.cos(order * angle - phaseRad);
    const due = 2 * Math.PI * (Math.floor(next / marks.length) + marks[next % marks.length]);
    if (angle + speed * h >= due) {
      times.push(t + (due - angle) / speed);
      next++;
    }
    angle += speed * h;
  }
  return times;
}
const even = { stepRad: Math.PI, startRad: 0, everyMarks: 2 };

describe('orderFit', () => {
  it('tells two orders that are no whole multiples of each other apart', () => {
    const angle = Array.from({ length: 4000 }, (_, k) => k * 0.37);
    const y = angle.map((a) => 5 + 0.3 * Math.cos(0.29 * a) + 0.2 * Math.sin(a));
    const fit = orderFit(angle, y, [0.29, 1])!;
    expect(fit.harmonics[0].cos).toBeCloseTo(0.3, 9);
    expect(fit.harmonics[1].sin).toBeCloseTo(0.2, 9);
    expect(fit.mean).toBeCloseTo(5, 9);
  });
  it('takes a slow drift for no order', () => {
    const angle = Array.from({ length: 2000 }, (_, k) => k * 0.37);
    const y = angle.map((_, k) => 1 + k / 1000 - (k / 2000) ** 2);
    expect(orderFit(angle, y, [0.29])!.harmonics[0].cos).toBeCloseTo(0, 9);
  });
  it('tells the spread of repeats', () => {
    const noise = seededNoise(4);
    const angle = Array.from({ length: 400 }, (_, k) => k * 0.37);
    const fits = Array.from({ length: 60 }, () =>
      orderFit(
        angle,
        angle.map(() => noise()),
        [0.29],
      )!,
    );
    const spread = Math.sqrt(fits.reduce((sum, { harmonics }) => sum + harmonics[0].cos ** 2, 0) / 60);
    expect(Math.sqrt(fits[0].covariance[0][0]) / spread).toBeGreaterThan(0.7);
    expect(Math.sqrt(fits[0].covariance[0][0]) / spread).toBeLessThan(1.4);
  });
  it('is null where an order is asked for twice', () =>
    expect(orderFit([0, 1, 2, 3, 4, 5, 6, 7], [1, 2, 3, 4, 5, 6, 7, 8], [0.3, 0.3])).toBeNull());
});
describe('markedSpeed', () => {
  it('gives the ripple of a slower part back, its size and its place', () => {
    const fit = markedSpeed(marksOf(0.29, 2, 1.1, [0, 0.5], 60), even, [0.29])!;
    const [{ cos, sin }] = fit.harmonics;
    expect(Math.hypot(cos, sin)).toBeCloseTo(2, 1);
    expect(Math.atan2(sin, cos)).toBeCloseTo(1.1, 1.5);
    expect(fit.mean).toBeCloseTo(300, 0);
  });
  it('does not take a mark 4 degrees out of place for a ripple', () => {
    const fit = markedSpeed(marksOf(0.29, 2, 1.1, [0, 0.511], 60), even, [0.29])!;
    expect(Math.hypot(fit.harmonics[0].cos, fit.harmonics[0].sin)).toBeCloseTo(2, 1);
  });
  it('is null with too few marks', () => expect(markedSpeed([0, 1, 2], even, [0.29])).toBeNull());
});
