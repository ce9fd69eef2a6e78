// SPDX-License-Identifier: MIT
// Heat capacity and resistance to the air of a can with a winding in it, from a known power on and off: the winding, how
// it is joined to the can, and how late and how far the thermistor follows are given, not fitted, because a run of some
// minutes can't tell them apart. It gives two constants of the body, no temperature beyond the run. Numbers only.
import { curveFit, type CurvePoint } from './curve-fit.ts';

/** What is taken as known. */
export interface KnownBody {
  readonly windingJPerK: number;
  readonly windingToCanKPerW: number;
  readonly lagS: number;
  /** Of the rise over the air, what the thermistor shows. */
  readonly shownShare: number;
}
/** Watts over time. */
export interface Heating {
  readonly canW: (timeS: number) => number;
  readonly windingW: (timeS: number) => number;
}
export interface TwoBodyFit {
  /** Winding and can together, J/K. */
  readonly capacityJPerK: number;
  readonly toAirKPerW: number;
  readonly uCapacity: number;
  readonly uToAir: number;
  readonly scatter: number;
  readonly dof: number;
}
const stepS = 1;

/** Points: what the thermistor shows above the air, from the moment the heating began (x = 0) on; those that are left out
 *  are simply not given. Null when the points can't tell the two apart. */
export function twoBodyFit(
  points: readonly CurvePoint[],
  heating: Heating,
  known: KnownBody,
): TwoBodyFit | null {
  const untilS = Math.max(...points.map(({ x }) => x));
  const watts = sampled(heating, untilS);
  const start = [90, 7, 0];
  const found = curveFit(
    ([capacity, toAir, startK]) => {
      const shown = courseOf(watts, capacity - known.windingJPerK, toAir, known);
      return (timeS) => startK + at(shown, timeS);
    },
    points,
    start,
  );
  if (!found || !(found.parameters[0] > known.windingJPerK) || !(found.parameters[1] > 0)) return null;
  const scatter = Math.sqrt(found.chi2 / found.dof);
  const inflated = Math.max(1, scatter);
  const [capacityJPerK, toAirKPerW] = found.parameters;
  return {
    capacityJPerK,
    toAirKPerW,
    uCapacity: inflated * Math.sqrt(found.covariance[0][0]),
    uToAir: inflated * Math.sqrt(found.covariance[1][1]),
    scatter,
    dof: found.dof,
  };
}
interface Watts {
  readonly can: Float64Array;
  readonly winding: Float64Array;
}
function sampled({ canW, windingW }: Heating, untilS: number): Watts {
  const count = Math.ceil(untilS / stepS) + 2;
  const middle = (k: number) => (k + 0.5) * stepS;
  return {
    can: Float64Array.from({ length: count }, (_, k) => canW(middle(k))),
    winding: Float64Array.from({ length: count }, (_, k) => windingW(middle(k))),
  };
}
/** What the thermistor shows above the air, every step; Heun's rule. */
function courseOf({ can, winding }: Watts, canJPerK: number, toAir: number, known: KnownBody): Float64Array {
  const { windingJPerK, windingToCanKPerW, lagS, shownShare } = known;
  const shown = new Float64Array(can.length + 1);
  let state = [0, 0, 0] as readonly [number, number, number];
  const slope = ([inner, outer, seen]: readonly number[], k: number): readonly [number, number, number] => {
    const across = (inner - outer) / windingToCanKPerW;
    return [
      (winding[k] - across) / windingJPerK,
      (can[k] + across - outer / toAir) / canJPerK,
      (shownShare * outer - seen) / lagS,
    ];
  };
  for (let k = 0; k < can.length; k++) {
    const first = slope(state, k);
    const guess = state.map((value, i) => value + stepS * first[i]);
    const second = slope(guess, k);
    state = state.map((value, i) => value + (stepS * (first[i] + second[i])) / 2) as unknown as typeof state;
    shown[k + 1] = state[2];
  }
  return shown;
}
function at(shown: Float64Array, timeS: number): number {
  const place = timeS / stepS;
  const k = Math.min(shown.length - 2, Math.max(0, Math.floor(place)));
  return shown[k] + (place - k) * (shown[k + 1] - shown[k]);
}
