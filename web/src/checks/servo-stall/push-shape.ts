// SPDX-License-Identifier: MIT
// What the shape of a push tells: a winding warms and its current falls evenly; electronics that limit it keep it flat
// or step it down; a soft start brings it up slowly. None of them is a fault by itself. Plain values.
import { linearRegression, mean, median } from 'simple-statistics';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { Stretch } from '../stretch.ts';
import { partMeans, type StallSeries } from './stall-series.ts';

export interface PushShape {
  readonly kind: 'winding' | 'limited';
  /** Where it is even: what the figure is taken from. */
  readonly stretch: Stretch;
  /** The moment a winding that warms evenly would have started to. */
  readonly stallS: number;
  /** How long a soft start brought the drive up; 0 where there is none. */
  readonly softS: number;
}
/** Inrush is over this long after the current rose (from memory and the model's 60 ms). */
export const inrushS = 0.06;
const partS = 0.02;
const fewestParts = 3;
/** Up to its level within so much. */
const risenShare = 0.97;
const lookS = 0.01;
/** Inrush is there at once; what rises for longer is brought up by electronics. */
const softFromS = 0.03;
/** The rail's current goes with the square of the drive: its onset, at 30 %, is seen at 55 % of the drive. */
const onsetDrive = Math.sqrt(0.3);
/** A winding of 0.7 J/K at 32 W loses 3 % of its current in 180 ms (computed); more than twice that is no warming. */
const steadyShare = 0.93;
/** Parts this much alike are flat; a step is more than twice that. */
const flatShare = 0.02;
/** A winding gains at least 4 % of resistance a second at 13 W and 1.1 J/K (computed); a current that is held, none. */
const leastWarmingPerS = 0.012;

/** Throws NotMeasurable where the push was no stall. */
export function shapeOf(degrees: number, series: StallSeries): PushShape {
  const riseS = riseTime(series);
  const soft = riseS > softFromS;
  const skipS = soft ? Math.max(inrushS, riseS + lookS) : inrushS;
  const parts = partMeans(series, skipS, partS);
  if (parts.length < fewestParts) throw new NotMeasurable(soft ? softWords(riseS) : tooLittle);
  const even = evenFrom(degrees, parts);
  const stretch = { fromS: series.onsetS + skipS + even * partS, toS: series.endS };
  const rampS = soft ? riseS / (1 - onsetDrive) : 0;
  const held = even > 0 || warmingPerS(series, stretch) < leastWarmingPerS;
  // While the drive comes up evenly, a third of the heat of full drive is made.
  const stallS = series.onsetS + (soft ? riseS - rampS / 3 : 0);
  return { kind: held ? 'limited' : 'winding', stretch, stallS, softS: rampS };
}
const tooLittle = 'Too little of a push was recorded. Run again.';
const softWords = (riseS: number): string =>
  `The current came up so slowly (${(1e3 * riseS).toFixed(0)} ms) that its end was not reached within a push of 250 ms: a soft start, which is no fault. Its stall current can't be told here.`;

/** From the onset until the current stands near its last level. */
function riseTime(series: StallSeries): number {
  const last = series.amps.filter((_, k) => series.timeS[k] > series.endS - 3 * partS);
  if (last.length === 0) throw new NotMeasurable(tooLittle);
  const level = median(Array.from(last));
  const risen = partMeans(series, 0, lookS).findIndex((amps) => amps >= risenShare * level);
  return Math.max(0, risen) * lookS;
}
/** First part of the even stretch: 0, or the one after a step down. */
function evenFrom(degrees: number, parts: readonly number[]): number {
  const end = parts[parts.length - 1];
  if (end >= steadyShare * Math.max(...parts)) return 0;
  const after = flatAfterStep(parts);
  if (after !== null) return after;
  throw new NotMeasurable(
    `At ${degrees} degrees the current fell from ${Math.max(...parts).toFixed(2)} A to ${end.toFixed(2)} A within one push, neither evenly nor in a step: the block gave way. Fix the block firmly and run again.`,
  );
}
/** First part after a step between two flat stretches, one part of which may hold the step; null where there is none. */
function flatAfterStep(parts: readonly number[]): number | null {
  const drops = parts.slice(1).map((amps, k) => parts[k] - amps);
  const step = drops.indexOf(Math.max(...drops)) + 1;
  const [before, after] = [step - 1, step]
    .flatMap((to) => [to, to + 1].map((from) => [to, from] as const))
    .find(([to, from]) => to > 0 && isFlat(parts.slice(0, to)) && isFlat(parts.slice(from))) ?? [
    0,
    parts.length,
  ];
  return before > 0 && parts.length - after >= fewestParts ? after : null;
}
const isFlat = (parts: readonly number[]): boolean =>
  Math.max(...parts) - Math.min(...parts) < flatShare * mean(Array.from(parts));

function warmingPerS(series: StallSeries, { fromS, toS }: Stretch): number {
  const { m, b } = linearRegression(series.ohms(fromS, toS));
  return m / b;
}
