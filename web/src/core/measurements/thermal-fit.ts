// SPDX-License-Identifier: MIT
// How a body warms under constant power: T = T0 + sum r_k (1 - e^(-t/tau_k)), one node or two, with standard
// deviations by J^T J. Those hold near the optimum only: what a short run leaves open is thermal-forecast.ts's.
// It knows numbers only.
import { curveFit, type CurveFit, type CurvePoint } from './curve-fit.ts';
import { exponentialSum, grown } from './exponential-sum.ts';
import type { LinearFit, Matrix } from './normal-equations.ts';

export type Nodes = 1 | 2;
export interface ThermalFit {
  readonly nodes: Nodes;
  readonly startC: number;
  /** Rise to the steady temperature, all nodes together, K, and its standard deviation by J^T J. */
  readonly riseK: number;
  readonly uRiseK: number;
  /** Rising order, s. */
  readonly tausS: readonly number[];
  readonly uTausS: readonly number[];
  /** Of the time constants, s2. */
  readonly tauCovariance: Matrix;
  /** Residual standard deviation over the points' own u. */
  readonly scatter: number;
  readonly dof: number;
  readonly runS: number;
}
const gridRatio = { 1: 1.08, 2: 1.25 } as const;
/** Time constants looked at, in run lengths; the last is a straight line to the eye. */
const gridEnds = [0.02, 40] as const;
/** Two nodes nearer than this can't be told apart. */
const apart = 1.6;

export interface Candidate {
  readonly tausS: readonly number[];
  readonly fit: LinearFit;
}
/** Null when the run doesn't show a rise with these nodes: too few points, too much noise, no curvature. */
export function thermalFit(points: readonly CurvePoint[], nodes: Nodes): ThermalFit | null {
  const runS = lengthOf(points);
  const [best] = candidates(points, nodes, runS).toSorted((a, b) => a.fit.chi2 - b.fit.chi2);
  if (!best) return null;
  const found = curveFit(warming, points, [...best.fit.amounts, ...best.tausS]);
  return found && isBody(found, nodes) ? described(found, nodes, runS) : null;
}
export const lengthOf = (points: readonly CurvePoint[]): number =>
  Math.max(...points.map(({ x }) => x)) - Math.min(...points.map(({ x }) => x));

/** Parameters: start, rises, time constants. */
function warming(parameters: readonly number[]): (timeS: number) => number {
  const nodes = (parameters.length - 1) / 2;
  const rises = parameters.slice(1, 1 + nodes);
  return (timeS) =>
    rises.reduce((sum, rise, k) => sum + rise * grown(timeS, parameters[1 + nodes + k]), parameters[0]);
}
const isBody = ({ parameters }: CurveFit, nodes: Nodes): boolean =>
  parameters.slice(1 + nodes).every((tauS) => Number.isFinite(tauS) && tauS > 0);

function described({ parameters, covariance, chi2, dof }: CurveFit, nodes: Nodes, runS: number): ThermalFit {
  const scatter = Math.sqrt(chi2 / dof);
  const inflated = Math.max(1, scatter);
  const rises = parameters.slice(1, 1 + nodes).map((_, k) => k + 1);
  const riseVariance = rises.flatMap((i) => rises.map((j) => covariance[i][j])).reduce((a, b) => a + b, 0);
  const order = parameters
    .map((_, k) => k)
    .slice(1 + nodes)
    .toSorted((a, b) => parameters[a] - parameters[b]);
  return {
    nodes,
    startC: parameters[0],
    riseK: rises.reduce((sum, k) => sum + parameters[k], 0),
    uRiseK: inflated * Math.sqrt(Math.max(0, riseVariance)),
    tausS: order.map((k) => parameters[k]),
    uTausS: order.map((k) => inflated * Math.sqrt(covariance[k][k])),
    tauCovariance: order.map((i) => order.map((j) => inflated ** 2 * covariance[i][j])),
    scatter,
    dof,
    runS,
  };
}
/** Time constants (or pairs) over a wide grid, each with its linear fit. */
export function candidates(points: readonly CurvePoint[], nodes: Nodes, runS: number): Candidate[] {
  const count = Math.ceil(Math.log(gridEnds[1] / gridEnds[0]) / Math.log(gridRatio[nodes]));
  const grid = Array.from({ length: count + 1 }, (_, k) => runS * gridEnds[0] * gridRatio[nodes] ** k);
  const sets =
    nodes === 1
      ? grid.map((tauS) => [tauS])
      : grid.flatMap((fastS) => grid.filter((slowS) => slowS > apart * fastS).map((slowS) => [fastS, slowS]));
  return fitted(points, sets);
}
/** The linear fit of each set of time constants; those that can't be told apart are left out. */
export function fitted(points: readonly CurvePoint[], sets: readonly (readonly number[])[]): Candidate[] {
  return sets.flatMap((tausS) => {
    const fit = exponentialSum(points, tausS);
    return fit ? [{ tausS, fit }] : [];
  });
}
