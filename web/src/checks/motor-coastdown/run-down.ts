// SPDX-License-Identifier: MIT
// The run-down of one rotor: speeds over whole electrical turns, the fit of dry friction and drags, and the signs that
// the controller brakes. Pure; it knows no limits.
import {
  coastDown,
  coastingSpeed,
  deceleration,
  turnSpeeds,
  type CoastDown,
  type Drags,
} from '#core/measurements/coast-down';
import type { CurvePoint } from '#core/measurements/curve-fit';
import { NotMeasurable, steadyOf } from '#core/measurements/tap-reading';
import { mean } from 'simple-statistics';
import type { AnalysisInput } from '../check.ts';
import type { Stretch } from '../stretch.ts';

/** Commanding neutral, its next frame, and the current in the leads to die away. */
const settlesS = 0.1;
/** Below this share of the first speed a turn takes too long to be called a moment; with a train on the shaft sooner. */
const lowestShare = { square: 0.3, linear: 0.35 } as const;
/** Half a tick as a rectangle. */
const uEdgeS = 0.5e-6 / Math.sqrt(12);
/** Current that flows back into the pack while it slows, A. */
const backFlowA = 0.05;

export interface RunDown {
  readonly fit: CoastDown;
  /** Of the whole run down, rig seconds. */
  readonly stoodAfterS: number;
}
export function runDown(input: AnalysisInput<unknown>, coast: Stretch, drags: Drags = 'square'): RunDown {
  const edges = input.samples.edges(coast.fromS + settlesS, coast.toS);
  const stoodAfterS = (edges.at(-1) ?? coast.fromS) - coast.fromS;
  const rising = edges.filter((_, k) => k % 2 === 0);
  const points = turnSpeeds(rising, input.car.motor.polePairs, uEdgeS);
  const slow = points.findIndex(({ y }) => y < lowestShare[drags] * points[0].y);
  const kept = slow < 0 ? points : points.slice(0, slow);
  requireFalling(points.slice(0, kept.length + 1));
  const fit = coastDown(kept, drags);
  if (!fit)
    throw new NotMeasurable(
      `Only ${kept.length} turns of the run-down could be told, too few for its friction. Check the sensor cable, then run again.`,
    );
  return { fit, stoodAfterS };
}
/** A missed or doubled edge makes a speed far from its neighbour's. */
function requireFalling(points: readonly CurvePoint[]): void {
  const jumps = points.slice(1).some(({ y }, k) => y < 0.6 * points[k].y || y > 1.4 * points[k].y);
  if (jumps)
    throw new NotMeasurable(
      'Hall edges were missed or doubled while the motor ran down. Check the sensor cable, then run again.',
    );
}
/** Current into the pack while nothing drives says that the winding is used as a brake. */
export function requireNoBackFlow(input: AnalysisInput<unknown>, coast: Stretch, idle: Stretch): void {
  const early = { fromS: coast.fromS + settlesS, toS: coast.fromS + settlesS + 0.25 };
  const neutralA = steadyOf(input, 'packCurrentNarrow', idle).mean;
  const { value, clipped } = input.samples.series('packCurrentNarrow', early.fromS, early.toS);
  if (clipped > 0) throw new NotMeasurable(brakes('fed more back than the tap can tell while it slowed'));
  const fallenA = neutralA - mean(Array.from(value));
  if (fallenA > backFlowA)
    throw new NotMeasurable(brakes(`fed ${fallenA.toFixed(2)} A back while it slowed`));
}
export const brakes = (seen: string): string =>
  `The motor ${seen}: the controller seems to brake at neutral. Set its drag brake to zero, then run again.`;

/** Seconds between two speeds along the fit, by halving; they lie between its ends. */
export function secondsBetween(fit: CoastDown, upperRadS: number, lowerRadS: number): number {
  const speed = coastingSpeed([fit.startRadS, fit.frictionRadS2, fit.dragPerS, fit.squarePerRad]);
  const longestS = fit.startRadS / fit.frictionRadS2;
  const reaches = (radS: number) => {
    let [low, high] = [0, longestS];
    for (let k = 0; k < 50; k++) {
      const middle = (low + high) / 2;
      if (speed(middle) > radS) low = middle;
      else high = middle;
    }
    return low;
  };
  return reaches(lowerRadS) - reaches(upperRadS);
}
/** Dry friction as a share of all drag at a speed, and its standard deviation. */
export function dryShare(fit: CoastDown, speedRadS: number): readonly [number, number] {
  const [whole] = deceleration(fit, speedRadS);
  const share = fit.frictionRadS2 / whole;
  const slopes = [0, (1 - share) / whole, (-share * speedRadS) / whole, (-share * speedRadS ** 2) / whole];
  const variance = fit.covariance.reduce(
    (sum, row, i) => sum + row.reduce((part, value, j) => part + slopes[i] * slopes[j] * value, 0),
    0,
  );
  return [share, Math.sqrt(Math.max(0, variance))];
}
