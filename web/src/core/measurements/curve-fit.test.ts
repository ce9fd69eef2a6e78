// SPDX-License-Identifier: MIT
// What the fit refuses, and how it weighs points. Its digits are held against NIST's reference sets in tests/outside.
import { describe, expect, it } from 'vitest';
import { curveFit } from './curve-fit.ts';

const line =
  ([a, b]: readonly number[]) =>
  (x: number) =>
    a + b * x;
const at = (x: number, y: number, u = 1) => ({ x, y, u });

describe('curveFit', () => {
  it('weighs points by 1/u^2: two of 0.1 outvote one of 1 as 100 to 1', () => {
    const level = curveFit(
      ([a]) =>
        () =>
          a,
      [at(0, 1, 0.1), at(1, 1, 0.1), at(2, 4, 1)],
      [0],
    )!;
    expect(level.parameters[0]).toBeCloseTo((200 * 1 + 4) / 201, 11);
    expect(level.covariance[0][0]).toBeCloseTo(1 / 201, 11);
  });
  it('gives the covariance of a line: s^2 sum x^2/(n Sxx) and s^2/Sxx', () => {
    const fit = curveFit(line, [at(0, 1), at(1, 3), at(2, 5.1), at(3, 6.9)], [0, 0])!;
    expect(fit.covariance[0][0]).toBeCloseTo(14 / (4 * 5), 9);
    expect(fit.covariance[1][1]).toBeCloseTo(1 / 5, 9);
    expect(fit.covariance[0][1]).toBeCloseTo(-1.5 / 5, 9);
  });
  it('is null when two parameters do the same', () =>
    expect(
      curveFit(
        ([a, b]) =>
          () =>
            a + b,
        [at(0, 1), at(1, 2), at(2, 3)],
        [0, 0],
      ),
    ).toBeNull());
  it('is null without a degree of freedom', () =>
    expect(curveFit(line, [at(0, 1), at(1, 2)], [0, 0])).toBeNull());
  it('is null where the curve has no value', () =>
    expect(
      curveFit(
        ([a]) =>
          (x) =>
            Math.log(a) * x,
        [at(1, 1), at(2, 2)],
        [-1],
      ),
    ).toBeNull());
});
