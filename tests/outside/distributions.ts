// SPDX-License-Identifier: MIT
// Quantiles of the distributions of jstat that the project calls, and coverage factors as the GUM prints them.
import jstat from 'jstat';
import { fixture } from './fixture-file.ts';
import { type OutsideCheck, printed, share } from './outside-check.ts';

const { source, t, f, chi2 } = fixture('quantiles');
/** jstat is good to about 5e-9. */
const tolerance = 1e-7;

/** F from the beta distribution, which is what the project has of jstat. */
function fInv(p: number, d1: number, d2: number): number {
  const x = jstat.beta.inv(p, d1 / 2, d2 / 2);
  return (d2 * x) / (d1 * (1 - x));
}
const levels = [0.6827, 0.9, 0.95, 0.9545, 0.99, 0.9973];
/** JCGM 100:2008, table G.2; eight of these figures seen in a secondary source, the others from memory. */
const gumTable: readonly (readonly [dof: number, factors: readonly number[]])[] = [
  [1, [1.84, 6.31, 12.71, 13.97, 63.66, 235.8]],
  [2, [1.32, 2.92, 4.3, 4.53, 9.92, 19.21]],
  [5, [1.11, 2.02, 2.57, 2.65, 4.03, 5.51]],
  [10, [1.05, 1.81, 2.23, 2.28, 3.17, 3.96]],
  [20, [1.03, 1.72, 2.09, 2.13, 2.85, 3.42]],
];
/** JCGM 106:2012: distance from a limit in standard uncertainties for a chance p of conforming. */
const oneSided = [
  [0.8, 0.84],
  [0.9, 1.28],
  [0.95, 1.64],
  [0.99, 2.33],
  [0.999, 3.09],
] as const;

export const distributions: readonly OutsideCheck[] = [
  {
    source,
    code: '`jstat.studentt.inv`',
    mark: 'computed',
    cases: t.map(([p, dof, value]) => ({
      name: `t ${p}, ${dof} degrees`,
      expected: value,
      got: () => jstat.studentt.inv(p, dof),
      within: share(value, tolerance),
    })),
  },
  {
    source,
    code: '`jstat.chisquare.inv`',
    mark: 'computed',
    cases: chi2.map(([p, dof, value]) => ({
      name: `chi-square ${p}, ${dof} degrees`,
      expected: value,
      got: () => jstat.chisquare.inv(p, dof),
      within: share(value, tolerance),
    })),
  },
  {
    source,
    code: '`jstat.beta.inv`, as F',
    mark: 'computed',
    cases: f.map(([p, d1, d2, value]) => ({
      name: `F ${p}, ${d1} and ${d2} degrees`,
      expected: value,
      got: () => fInv(p, d1, d2),
      within: share(value, tolerance),
    })),
  },
  {
    source: 'JCGM 100:2008 (GUM), table G.2',
    code: '`jstat.studentt.inv`',
    mark: 'from memory',
    cases: gumTable.flatMap(([dof, factors]) =>
      factors.map((factor, k) => ({
        name: `${levels[k]}, ${dof} degrees`,
        expected: factor,
        got: () => jstat.studentt.inv((1 + levels[k]) / 2, dof),
        within: printed(factor > 100 ? 1 : 2),
      })),
    ),
  },
  {
    source: 'JCGM 106:2012, one-sided tolerance interval',
    code: '`jstat.normal.inv`',
    mark: 'from memory',
    cases: oneSided.map(([p, z]) => ({
      name: `z for ${p}`,
      expected: z,
      got: () => jstat.normal.inv(p, 0, 1),
      within: printed(2),
    })),
  },
];
