// SPDX-License-Identifier: MIT
// Where a warming body will be. A short run can't tell a small body from a large one, so the interval is the
// profile likelihood over the time constants (every set that the points don't contradict has its say), and nothing
// is claimed beyond three times the run. Scatter and model only: the sensor's own errors are the caller's, and a
// body of more nodes than asked for lies beyond any of this. It knows numbers only.
import jstat from 'jstat';
import type { CurvePoint } from './curve-fit.ts';
import { valueAt } from './exponential-sum.ts';
import {
  type Candidate,
  candidates,
  fitted,
  lengthOf,
  type Nodes,
  type ThermalFit,
  thermalFit,
} from './thermal-fit.ts';

export interface Forecast {
  readonly celsius: number;
  readonly interval: readonly [number, number];
}
/** How far beyond the run's own length a forecast may reach. */
export const horizon = 3;
/** Finer search about the optimum: steps and reach in standard deviations. */
const nearStep = { 1: 0.1, 2: 0.25 } as const;
const nearReach = 4;

/** 95 % interval of the temperature at `timeS`, on the points' own time axis. Null beyond three run lengths. */
export function forecast(
  points: readonly CurvePoint[],
  nodes: Nodes,
  timeS: number,
  probability = 0.95,
): Forecast | null {
  const dof = points.length - 1 - 2 * nodes;
  const firstS = Math.min(...points.map(({ x }) => x));
  const runS = lengthOf(points);
  if (dof < 3 || timeS - firstS > horizon * runS) return null;
  const all = [...candidates(points, nodes, runS), ...fitted(points, nearSets(thermalFit(points, nodes)))];
  if (all.length === 0) return null;
  return spanned(all, timeS, dof, jstat.studentt.inv((1 + probability) / 2, dof));
}
/** Values at `timeS` of all fits within t^2 of the best one's chi2. */
function spanned(all: readonly Candidate[], timeS: number, dof: number, t: number): Forecast {
  const best = all.reduce((a, b) => (b.fit.chi2 < a.fit.chi2 ? b : a));
  const room = t * t * Math.max(1, best.fit.chi2 / dof);
  const spans = all.flatMap(({ tausS, fit }) => {
    const left = best.fit.chi2 + room - fit.chi2;
    if (left < 0) return [];
    const [value, u] = valueAt(fit, tausS, timeS);
    return [value - u * Math.sqrt(left), value + u * Math.sqrt(left)];
  });
  const [celsius] = valueAt(best.fit, best.tausS, timeS);
  return { celsius, interval: [Math.min(...spans), Math.max(...spans)] };
}
/** The steady temperature, only when the slowest body has all but arrived (98 %) within the horizon. */
export function steadyForecast(points: readonly CurvePoint[], fit: ThermalFit): Forecast | null {
  const slowestS = fit.tausS[fit.nodes - 1] + 2 * fit.uTausS[fit.nodes - 1];
  const firstS = Math.min(...points.map(({ x }) => x));
  return slowestS * 4 <= horizon * fit.runS ? forecast(points, fit.nodes, firstS + horizon * fit.runS) : null;
}
/** Time constants within some standard deviations of the optimum, along the axes of their covariance. */
function nearSets(fit: ThermalFit | null): number[][] {
  if (!fit) return [];
  const { tausS, tauCovariance: c } = fit;
  const reach = Math.round(nearReach / nearStep[fit.nodes]);
  const steps = Array.from({ length: 2 * reach + 1 }, (_, k) => (k - reach) * nearStep[fit.nodes]);
  const l = Math.sqrt(c[0][0]);
  if (fit.nodes === 1) return steps.map((z) => [tausS[0] + z * l]).filter(isBody);
  const across = c[1][0] / l;
  const own = Math.sqrt(Math.max(0, c[1][1] - across ** 2));
  return steps
    .flatMap((z) => steps.map((y) => [tausS[0] + z * l, tausS[1] + z * across + y * own]))
    .filter(isBody);
}
const isBody = (tausS: readonly number[]): boolean => tausS[0] > 0 && (tausS[1] ?? Infinity) > tausS[0];
