// SPDX-License-Identifier: MIT
// Durations made from a known line and ended at the next of a servo's steps: the slope must come back closer than a
// line of least squares brings it, and its doubt must be honest.
import { describe, expect, it } from 'vitest';
import { linearRegression } from 'simple-statistics';
import { seededRandom } from '#sim/seeded-random';
import { lengthsUs } from './procedure.ts';
import { steppedLine } from './stepped-line.ts';

const stepS = 0.02;
const everyUs = 6;
const made = Array.from({ length: 60 }, (_, k) => {
  const random = seededRandom(k, 'stepped line');
  const slope = random.between(0.2e-3, 0.32e-3);
  const intercept = random.between(-0.03, 0.01);
  const points = lengthsUs
    .flatMap((us, index) => [us, us + (index % 2 === 0 ? -everyUs : everyUs)])
    .map((us): [number, number] => {
      const steps = Math.ceil((intercept + slope * us) / stepS);
      return [us, steps * stepS + random.between(-5e-4, 5e-4)];
    });
  return { slope, points, line: steppedLine(points, stepS) };
});
const worst = (errors: readonly number[]) => Math.max(...errors.map(Math.abs));

describe('a line through stepped durations', () => {
  it('has its slope within 2.5 ms for 600 us', () =>
    expect(600 * worst(made.map(({ slope, line }) => line.slope - slope))).toBeLessThan(0.0025));
  it('is closer than least squares', () => {
    const squares = made.map(({ slope, points }) => linearRegression(points).m - slope);
    const stepped = made.map(({ slope, line }) => line.slope - slope);
    const mean = (errors: readonly number[]) =>
      errors.reduce((sum, e) => sum + Math.abs(e), 0) / errors.length;
    expect(mean(stepped)).toBeLessThan(0.8 * mean(squares));
  });
  it('tells its doubt: two of its uncertainties hold the slope nine times in ten', () => {
    const held = made.filter(({ slope, line }) => Math.abs(line.slope - slope) <= 2 * line.uSlope);
    expect(held.length).toBeGreaterThanOrEqual(0.9 * made.length);
    expect(worst(made.map(({ line }) => line.uSlope)) * 600).toBeLessThan(0.004);
  });
});
