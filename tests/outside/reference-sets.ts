// SPDX-License-Identifier: MIT
// NIST/ITL Statistical Reference Datasets: certified parameters and standard deviations against the project's fit
// (ml-levenberg-marquardt behind curveFit), line (simple-statistics) and summaries. Norris and Michelso stand beside
// york-fit and steady-mean.
import { linearRegression } from 'simple-statistics';
import { curveFit, type Curve, type CurveFit } from '#core/measurements/curve-fit';
import { norris } from '#core/measurements/norris-fixture';
import { steadyMean } from '#core/measurements/steady-mean';
import { fixture, type RegressionSet, type UnivariateSet } from './fixture-file.ts';
import { type OutsideCase, type OutsideCheck, share } from './outside-check.ts';

const approach: Curve =
  ([a, b]) =>
  (x) =>
    a * (1 - Math.exp(-b * x));
const decay: Curve =
  ([a, b, c]) =>
  (x) =>
    Math.exp(-a * x) / (b + c * x);
export const curves: Readonly<Record<string, Curve>> = {
  Misra1a: approach,
  BoxBOD: approach,
  Chwirut1: decay,
  Chwirut2: decay,
  DanWood:
    ([a, b]) =>
    (x) =>
      a * x ** b,
  Eckerle4:
    ([a, b, c]) =>
    (x) =>
      (a / b) * Math.exp(-0.5 * ((x - c) / b) ** 2),
  Rat43:
    ([a, b, c, d]) =>
    (x) =>
      a / (1 + Math.exp(b - c * x)) ** (1 / d),
  MGH09:
    ([a, b, c, d]) =>
    (x) =>
      (a * (x * x + x * b)) / (x * x + x * c + d),
  Thurber:
    ([a, b, c, d, e, f, g]) =>
    (x) =>
      (a + x * (b + x * (c + x * d))) / (1 + x * (e + x * (f + x * g))),
};
/** Starts from which the fit says that it found no minimum; the sets' own second starts all lead there. */
export const tooFar = ['BoxBOD start 1', 'Rat43 start 1', 'MGH09 start 1', 'Eckerle4 start 1'];

const polynomial: Curve = (b) => (x) => b.reduceRight((sum, c) => sum * x + c, 0);
const throughOrigin: Curve =
  ([b]) =>
  (x) =>
    b * x;

export const fitted = (set: RegressionSet, curve: Curve, start: readonly number[]): CurveFit | null =>
  curveFit(
    curve,
    set.points.map(([x, y]) => ({ x, y, u: 1 })),
    start,
  );
function casesOf(set: RegressionSet, curve: Curve, start: readonly number[], words: string): OutsideCase[] {
  const fit = fitted(set, curve, start);
  const scatter = fit ? Math.sqrt(fit.chi2 / fit.dof) : Number.NaN;
  return set.certified.flatMap((value, k) => [
    {
      name: `${words}, parameter ${k + 1}`,
      expected: value,
      got: () => fit?.parameters[k] ?? null,
      within: share(value, 5e-7),
    },
    {
      name: `${words}, its standard deviation`,
      expected: set.sd[k],
      got: () => fit && Math.sqrt(fit.covariance[k][k]) * scatter,
      within: share(set.sd[k], 5e-5),
    },
  ]);
}
const nonlinear: OutsideCheck[] = fixture('strd-nonlinear').sets.map((set) => ({
  source: `NIST StRD, nonlinear, ${set.name}`,
  code: '`curveFit` (ml-levenberg-marquardt)',
  cases: ([1, 2] as const)
    .map((n) => [`start ${n}`, n === 1 ? set.start1 : set.start2] as const)
    .filter(([words]) => !tooFar.includes(`${set.name} ${words}`))
    .flatMap(([words, start]) => casesOf(set, curves[set.name], start, words)),
}));
/** Wampler1 has no scatter and Filip is beyond doubles' normal equations: outside.test.ts. */
const linearSets = fixture('strd-linear').sets.filter(({ name }) => !['Wampler1', 'Filip'].includes(name));
const linear: OutsideCheck[] = linearSets.map((set) => ({
  source: `NIST StRD, linear, ${set.name}`,
  code: '`curveFit`',
  cases: casesOf(
    set,
    set.certified.length === 1 ? throughOrigin : polynomial,
    set.certified.map(() => 0),
    'start 0',
  ),
}));
const line = linearRegression(norris.points.map(([y, x]) => [x, y]));
const norrisLine: OutsideCheck = {
  source: 'NIST StRD, linear, Norris',
  code: '`linearRegression` (simple-statistics), as the servo check uses it',
  cases: [
    { name: 'slope', expected: norris.slope, got: () => line.m, within: share(norris.slope, 1e-9) },
    {
      name: 'intercept',
      expected: norris.intercept,
      got: () => line.b,
      within: share(norris.intercept, 1e-6),
    },
  ],
};
const valuesOf = ({ values, first, pair, pairs }: UnivariateSet): number[] =>
  values ? [...values] : [first!, ...Array.from({ length: 2 * pairs! }, (_, k) => pair![k % 2])];
/** Doubles leave NumAcc3 9.5 and NumAcc4 8.3 digits of deviation. */
const sdDigits: Readonly<Record<string, number>> = { NumAcc3: 9, NumAcc4: 8 };
const univariate: OutsideCheck[] = fixture('strd-univariate')
  .sets.filter((set) => valuesOf(set).length >= 32)
  .map((set) => {
    const found = steadyMean(valuesOf(set));
    const sdWithin = 10 ** -(sdDigits[set.name] ?? 12);
    return {
      source: `NIST StRD, univariate, ${set.name}`,
      code: '`steadyMean` (simple-statistics)',
      cases: [
        { name: 'mean', expected: set.mean, got: () => found?.mean ?? null, within: share(set.mean, 1e-13) },
        {
          name: 'standard deviation',
          expected: set.sd,
          got: () => found?.sd ?? null,
          within: share(set.sd, sdWithin),
        },
      ],
    };
  });
export const referenceSets: readonly OutsideCheck[] = [...nonlinear, ...linear, norrisLine, ...univariate];
