// SPDX-License-Identifier: MIT
// The rule's promise by simulation: a part that is just out passes in at most 2.5 % of runs, whatever shapes its
// budget has (JCGM 106:2012, consumer's risk of one item). Errors are drawn here, apart from the propagation.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seededRandom, type SeededRandom } from '#sim/seeded-random';
import { halfWidth } from '../measurements/coverage-interval.ts';
import type { BudgetLine, Measured } from '../measurements/measurement.ts';
import { judge } from './judge.ts';
import type { Limit } from './limit.ts';

const draws = 20_000;
const risk = 0.025;
/** The grid's slack, and five standard deviations of a share of 2.5 % in 20 000 draws: 0.55 %. */
const slack = 1e-4 + 5 * Math.sqrt((risk * (1 - risk)) / draws);

const shape = fc.constantFrom('normal' as const, 'rectangular' as const, 'student' as const);
const anyLine = fc.record({
  shape,
  u: fc.double({ min: 0.02, max: 1, noNaN: true }),
  dof: fc.integer({ min: 4, max: 40 }),
});
const boundedLine = fc.record({
  shape: fc.constantFrom('normal' as const, 'rectangular' as const),
  u: fc.double({ min: 0.02, max: 1, noNaN: true }),
  dof: fc.constant(9),
});
const lineOf = ({
  shape: of,
  u,
  dof,
}: {
  shape: BudgetLine['shape'];
  u: number;
  dof: number;
}): BudgetLine => ({
  source: of,
  u,
  shape: of,
  dof: of === 'student' ? dof : Number.POSITIVE_INFINITY,
  origin: 'drawn',
});
const found = (value: number, budget: readonly BudgetLine[]): Measured => ({
  measured: true,
  id: 'x',
  title: 'x',
  unit: 'V',
  value,
  u: Math.hypot(...budget.map(({ u }) => u)),
  interval: [value - 1, value + 1],
  budget,
  evidence: [],
  formula: '',
  notes: [],
});
const passes = (value: number, budget: readonly BudgetLine[], limit: Limit): boolean =>
  judge(found(value, budget), limit).verdict === 'pass';
/** How far inside its bound a value begins to pass: the half-width, held against the judge 1 % to either side. */
function guardBand(budget: readonly BudgetLine[], limit: Limit): number {
  const band = halfWidth(budget);
  expect(passes(-1.01 * band, budget, limit)).toBe(true);
  expect(passes(-0.99 * band, budget, limit)).toBe(false);
  return band;
}
function drawn(random: SeededRandom, line: BudgetLine): number {
  if (line.shape === 'rectangular') return random.between(-1, 1) * Math.sqrt(3) * line.u;
  if (line.shape === 'normal') return line.u * random.gaussian();
  return (line.u * random.gaussian()) / Math.sqrt(chiSquared(random, line.dof) / line.dof);
}
function chiSquared(random: SeededRandom, dof: number): number {
  let sum = 0;
  for (let i = 0; i < dof; i++) sum += random.gaussian() ** 2;
  return sum;
}
function shareOf(seed: number, budget: readonly BudgetLine[], holds: (error: number) => boolean): number {
  const random = seededRandom(seed, 'errors');
  let count = 0;
  for (let i = 0; i < draws; i++)
    if (holds(budget.reduce((sum, line) => sum + drawn(random, line), 0))) count++;
  return count / draws;
}
const base = { unit: 'V', kind: 'published', source: 'example' } as const;

describe('a part that is just out', () => {
  const max: Limit = { ...base, max: 0 };
  it('passes in at most 2.5 % of runs, one bound, any budget', () =>
    fc.assert(
      fc.property(fc.array(anyLine, { minLength: 1, maxLength: 4 }), fc.nat(), (lines, seed) => {
        const budget = lines.map(lineOf);
        const band = guardBand(budget, max);
        return shareOf(seed, budget, (error) => error <= -band) <= risk + slack;
      }),
      { numRuns: 20, seed: 90 },
    ));
  it('passes in at most 2.5 % of runs between two bounds, near or far', () =>
    fc.assert(
      fc.property(
        fc.array(boundedLine, { minLength: 1, maxLength: 3 }),
        fc.double({ min: 1.05, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.nat(),
        (lines, width, at, seed) => {
          const budget = lines.map(lineOf);
          const half = width * halfWidth(budget);
          const limit = { ...base, min: -half, max: half };
          // A value somewhere inside; if it passes, all nearer the middle do, and the chance to land there is counted.
          const inside = at * half;
          if (!passes(inside, budget, limit)) return true;
          return shareOf(seed, budget, (error) => Math.abs(half + error) <= inside) <= risk + slack;
        },
      ),
      { numRuns: 60, seed: 91 },
    ));
  it.each([
    ['one normal line', [{ shape: 'normal', u: 1, dof: 9 }]],
    [
      'one rectangle that rules',
      [
        { shape: 'rectangular', u: 1, dof: 9 },
        { shape: 'normal', u: 0.1, dof: 9 },
      ],
    ],
    ['a few degrees of freedom', [{ shape: 'student', u: 1, dof: 4 }]],
  ] as const)(
    'passes in very nearly 2.5 %% with %s: the guard band is no wider than it must be',
    (_, lines) => {
      const budget = lines.map(lineOf);
      const band = guardBand(budget, max);
      const share = shareOf(7, budget, (error) => error <= -band);
      expect(Math.abs(share - risk)).toBeLessThan(slack);
    },
  );
  it('a spread that is itself only estimated does not raise the risk: value and its u drawn anew for each run', () => {
    // With one student line the guard band grows with u, so one band serves every draw.
    const dof = 7;
    const band = guardBand([lineOf({ shape: 'student', u: 1, dof })], max);
    const random = seededRandom(11, 'runs');
    let passed = 0;
    for (let i = 0; i < draws; i++)
      if (random.gaussian() <= -band * Math.sqrt(chiSquared(random, dof) / dof)) passed++;
    expect(Math.abs(passed / draws - risk)).toBeLessThan(slack);
  });
});
