// SPDX-License-Identifier: MIT
// The generator against the reference output of its authors' C code and against closed forms of its distributions.
import { describe, expect, it } from 'vitest';
import { seededRandom, xoshiro128 } from './seeded-random.ts';

describe('seeded random', () => {
  it('gives the reference sequence of xoshiro128** from state 1 2 3 4', () => {
    // Printed by the authors' C code (next() of xoshiro128starstar.c) compiled with gcc.
    const state = Uint32Array.of(1, 2, 3, 4);
    const got = Array.from({ length: 10 }, () => xoshiro128(state));
    expect(got).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ]);
  });

  it('repeats for the same seed and name and differs for others', () => {
    const draw = (seed: number, name: string): number[] => {
      const random = seededRandom(seed, name);
      return Array.from({ length: 5 }, () => random.unit());
    };
    expect(draw(7, 'a')).toEqual(draw(7, 'a'));
    expect(draw(7, 'a')).not.toEqual(draw(8, 'a'));
    expect(draw(7, 'a')).not.toEqual(draw(7, 'b'));
  });

  it('gives a stream by name that does not depend on earlier draws', () => {
    const parent = seededRandom(3);
    const before = parent.stream('noise').unit();
    parent.unit();
    expect(parent.stream('noise').unit()).toBe(before);
  });

  it('has the moments of a standard normal and of a rectangle', () => {
    const random = seededRandom(11);
    const n = 200_000;
    let sum = 0;
    let squares = 0;
    let flat = 0;
    for (let i = 0; i < n; i++) {
      const g = random.gaussian();
      sum += g;
      squares += g * g;
      flat += random.between(2, 4);
    }
    // Five standard errors: 5/sqrt(n), 5*sqrt(2/n), 5*(2/sqrt(12))/sqrt(n).
    expect(Math.abs(sum / n)).toBeLessThan(5 / Math.sqrt(n));
    expect(Math.abs(squares / n - 1)).toBeLessThan(5 * Math.sqrt(2 / n));
    expect(Math.abs(flat / n - 3)).toBeLessThan((5 * 2) / Math.sqrt(12 * n));
  });
});
