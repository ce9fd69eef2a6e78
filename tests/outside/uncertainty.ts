// SPDX-License-Identifier: MIT
// Examples of the GUM that stand not yet beside quantity, york-fit and coverage-interval: the prediction of H.3, the
// repeated product of the suites that carry it, d.c. resistance of a cell in the form of IEC 61960, and JCGM 106.
import { chanceBeyond } from '#core/measurements/coverage-interval';
import {
  combined,
  effectiveDof,
  linear,
  standardU,
  type Source,
  uncertain,
} from '#core/measurements/quantity';
import { yorkFit } from '#core/measurements/york-fit';
import { type OutsideCheck, printed } from './outside-check.ts';

const source = (id: string, dof = Number.POSITIVE_INFINITY): Source => ({
  id,
  words: id,
  shape: 'normal',
  dof,
  origin: 'example',
});
const input = (id: string, value: number, u: number, dof?: number) =>
  uncertain(value, [[source(id, dof), u]]);

const celsius = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.01, 26.511];
const correctionC = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.16];
const line = yorkFit(celsius.map((t, k) => ({ x: t - 20, y: correctionC[k], ux: 0, uy: 1 })))!;
const s = Math.sqrt(line.chi2 / line.dof);
/** Intercept and slope with their covariance, as sums of two independent sources. */
const [one, two] = [source('one', 9), source('two', 9)];
const slope = uncertain(line.slope, [[one, s * line.uSlope]]);
const along = (s * line.covariance) / line.uSlope;
const intercept = uncertain(line.intercept, [
  [one, along],
  [two, Math.sqrt((s * line.uIntercept) ** 2 - along ** 2)],
]);
const at30 = linear([
  [1, intercept],
  [10, slope],
]);
const product = combined(
  [input('x1', 0.182, 0.00093, 9), input('x2', 0.1823, 0.00058, 19), input('yu', 0.6978, 0.0026, 19)],
  (x1, x2, yu) => (x1 / x2) * yu,
);
const amps = [0, 2, 4, 6, 8, 10];
const volts = [8.401, 8.362, 8.329, 8.293, 8.254, 8.221];
const supply = yorkFit(amps.map((i, k) => ({ x: i, y: volts[k], ux: 0, uy: 1 })))!;
const supplyS = Math.sqrt(supply.chi2 / supply.dof);
/** IEC 61960-3, d.c. internal resistance: two loads one after the other, R = (U1 - U2)/(I2 - I1). */
const cell = combined(
  [input('u1', 8.15, 0.001), input('i1', 0.4, 0.001), input('u2', 7.92, 0.001), input('i2', 2, 0.001)],
  (u1, i1, u2, i2) => (u1 - u2) / (i2 - i1),
);
const normal = { u: 1, shape: 'normal', dof: Number.POSITIVE_INFINITY } as const;

export const uncertainty: readonly OutsideCheck[] = [
  {
    source: 'JCGM 100:2008 (GUM), H.3, thermometer calibration',
    code: '`yorkFit`, `linear`, `standardU`',
    cases: [
      { name: 'b(30 C)', expected: -0.1494, got: () => at30.value, within: printed(4) },
      { name: 'u of b(30 C)', expected: 0.0041, got: () => standardU(at30), within: printed(4) },
      { name: 'intercept', expected: -0.1712, got: () => intercept.value, within: printed(4) },
      { name: 'its u', expected: 0.0029, got: () => standardU(intercept), within: printed(4) },
      { name: 'slope', expected: 0.00218, got: () => slope.value, within: printed(5) },
      { name: 'its u', expected: 0.00067, got: () => standardU(slope), within: printed(5) },
    ],
  },
  {
    source: 'Ratio of two readings times a standard, worked example (secondary source; rounded on its way)',
    code: '`combined`, `effectiveDof`',
    cases: [
      { name: 'value', expected: 0.6967, got: () => product.value, within: printed(4) },
      { name: 'u', expected: 0.00494, got: () => standardU(product), within: 2e-5 },
      { name: 'effective degrees', expected: 27.7, got: () => effectiveDof(product), within: 0.3 },
    ],
  },
  {
    source: 'IEC 61960-3, form of the d.c. internal resistance; figures made up, no published example found',
    code: '`combined`',
    mark: 'computed',
    cases: [
      { name: '8.15 V at 0.4 A, 7.92 V at 2 A', expected: 0.14375, got: () => cell.value, within: 1e-12 },
    ],
  },
  {
    source: 'Least squares of a source by its definition; figures made up',
    code: '`yorkFit`',
    mark: 'computed',
    cases: [
      { name: 'resistance', expected: 0.018, got: () => -supply.slope, within: 1e-9 },
      { name: 'open voltage', expected: 8.4, got: () => supply.intercept, within: 5e-4 },
      { name: 's', expected: 1.732051e-3, got: () => supplyS, within: 1e-9 },
      {
        name: 'u of the voltage',
        expected: 1.25357e-3,
        got: () => supplyS * supply.uIntercept,
        within: 1e-8,
      },
      { name: 'u of the resistance', expected: 2.0702e-4, got: () => supplyS * supply.uSlope, within: 1e-8 },
    ],
  },
  {
    source: 'JCGM 106:2012, conformance with one limit 1.40 standard uncertainties away',
    code: '`chanceBeyond`',
    mark: 'from memory',
    cases: [
      {
        name: 'chance of conforming',
        expected: 0.92,
        got: () => 1 - chanceBeyond([normal], 1.4),
        within: printed(2),
      },
    ],
  },
];
