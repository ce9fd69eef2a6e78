// SPDX-License-Identifier: MIT
// When a servo draws current while its pulse moves slowly: runs of a short mean of the rail current above its idle
// level. A strong servo stands out of a mean over 8 values, a weak one needs 32.
import type { Stretch } from '../stretch.ts';

/** From when to when current flowed, s. */
export type CurrentRun = Stretch;
interface Smoothing {
  readonly scans: number;
  /** Four times the noise of such a mean, A: some 4 mA a value, from memory of the tap's own. */
  readonly noiseA: number;
}
const short: Smoothing = { scans: 8, noiseA: 6e-3 };
const long: Smoothing = { scans: 32, noiseA: 2.5e-3 };
/** A servo that leaps far draws current for less than a hundredth of the time. */
const topShare = 0.995;
/** A pause shorter than this is noise, s. */
const pauseS = 0.012;

/** The mean of the rail current above its idle level, A, and the level that it reaches. */
export interface SmoothCurrent extends Smoothing {
  readonly timeS: Float64Array;
  /** From one value to the next, s. */
  readonly scanS: number;
  readonly aboveA: readonly number[];
  readonly topA: number;
}
/** `restA`: the level at rest; a servo that holds itself off its place there draws less in its dead band. */
export function smoothCurrent(timeS: Float64Array, value: Float64Array, restA: number): SmoothCurrent {
  const quick = averaged(timeS, value, restA, short);
  if (quick.topA > 2 * short.noiseA && !isSteady(quick)) return quick;
  const silentA = quantile(0.05, movingMean(value, long.scans));
  return averaged(timeS, value, Math.min(restA, silentA), long);
}
/** Runs above `share` of the top, or above the noise where that is more. */
export function currentRuns(current: SmoothCurrent, share: number): CurrentRun[] {
  const found = above(current.aboveA, thresholdOf(current, share));
  return joined(found.map(([from, to]) => timesOf(current, from, to)));
}
export const thresholdOf = ({ noiseA, topA }: SmoothCurrent, share: number): number =>
  Math.max(noiseA, share * topA);

function averaged(timeS: Float64Array, value: Float64Array, idleA: number, smoothing: Smoothing) {
  const aboveA = movingMean(value, smoothing.scans).map((amps) => amps - idleA);
  const scanS = (timeS[timeS.length - 1] - timeS[0]) / (timeS.length - 1);
  return { ...smoothing, timeS, scanS, aboveA, topA: quantile(topShare, aboveA) };
}
/** Not in bursts: the time can be taken for a longer mean, which sees less of a current. */
const isSteady = ({ aboveA, topA }: SmoothCurrent): boolean =>
  aboveA.filter((amps) => amps > 0.3 * topA).length > 0.6 * aboveA.length;
const quantile = (share: number, values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(share * values.length)] ?? 0;
/** Value k of a mean is that of the window that begins at k: its middle counts. */
function timesOf({ timeS, scans }: SmoothCurrent, from: number, to: number): CurrentRun {
  return { fromS: timeS[from + scans / 2], toS: timeS[to - 1 + scans / 2] };
}
function joined(runs: readonly CurrentRun[]): CurrentRun[] {
  const kept: CurrentRun[] = [];
  for (const run of runs) {
    const last = kept.at(-1);
    if (last && run.fromS - last.toS < pauseS) kept[kept.length - 1] = { fromS: last.fromS, toS: run.toS };
    else kept.push(run);
  }
  return kept;
}
function above(values: readonly number[], threshold: number): [number, number][] {
  const runs: [number, number][] = [];
  for (let k = 0, from = -1; k <= values.length; k++) {
    const isAbove = k < values.length && values[k] >= threshold;
    if (isAbove === from >= 0) continue;
    if (!isAbove) runs.push([from, k]);
    from = isAbove ? k : -1;
  }
  return runs;
}
/** Moving mean; value k is the mean of the window that begins at k. */
function movingMean(values: Float64Array, scans: number): number[] {
  const means: number[] = [];
  let sum = 0;
  values.forEach((value, k) => {
    sum += value - (k >= scans ? values[k - scans] : 0);
    if (k >= scans - 1) means.push(sum / scans);
  });
  return means;
}
