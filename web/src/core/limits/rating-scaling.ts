// SPDX-License-Identifier: MIT
// Carries a servo's rating from the voltage it holds at to another one by k (V - V0), never in plain proportion:
// through two ratings where the label has two, else with V0 between stated ends. The model's own uncertainty goes
// with the value; where the model does not hold, the rating is refused in words. It knows no servo and no check.
import type { Unusable } from './precedence.ts';

export type ServoQuantity = 'torque' | 'speed' | 'current';
export interface RatingAt {
  readonly value: number;
  readonly atV: number;
}
export interface Scaled {
  readonly value: number;
  /** Standard uncertainty of the model, as a share of the value; 0 for a rating used where it holds. */
  readonly share: number;
  readonly words: string;
}
interface Model {
  readonly lowV0: number;
  readonly highV0: number;
  readonly origin: string;
}
/** Ends between which V0 lies, servo to servo. */
export const scalingModels: Readonly<Record<ServoQuantity, Model>> = {
  /** 180 to 185 oz.in at 6.0 V and about 240 at 7.4 V give 1.3 to 1.8 V; half a volt more either side. */
  torque: { lowV0: 0.8, highV0: 2.3, origin: 'common practice and from memory, no source' },
  /** V0 = V I0/Is: running light 0.2 to 0.6 A, stalled 3.5 to 7 A at 7.4 V. */
  speed: { lowV0: 0.2, highV0: 1.3, origin: 'computed from usual currents, from memory' },
  /** Brushes and bridge keep up to half a volt and a little to themselves. */
  current: { lowV0: 0, highV0: 0.6, origin: 'from memory, no source' },
};
/** From memory: farther than this, friction, saturation and current limits bend the line. */
const farthestRatio = { low: 0.7, high: 1.4 };
/** Labels are rounded: half-width as a share, from memory. */
const labelRounding = 0.01;
const sameV = 0.02;

export function scaledRating(
  quantity: ServoQuantity,
  ratings: readonly RatingAt[],
  toV: number,
): Scaled | Unusable {
  const straight = ratings.find(({ atV }) => Math.abs(atV - toV) < sameV);
  if (straight) return { value: straight.value, share: 0, words: `rated at ${straight.atV} V` };
  const nearest = ratings.toSorted((a, b) => Math.abs(a.atV - toV) - Math.abs(b.atV - toV))[0];
  if (!nearest) return { unusable: `There is no rated ${quantity}.` };
  const ratio = toV / nearest.atV;
  if (!(ratio >= farthestRatio.low && ratio <= farthestRatio.high)) return tooFar(quantity, nearest, toV);
  return ratings.length > 1 ? throughTwo(quantity, ratings, toV) : throughOne(quantity, nearest, toV);
}
function throughOne(quantity: ServoQuantity, { value, atV }: RatingAt, toV: number): Scaled {
  const { lowV0, highV0, origin } = scalingModels[quantity];
  const v0 = (lowV0 + highV0) / 2;
  const factor = (toV - v0) / (atV - v0);
  const slope = (toV - atV) / (atV - v0) ** 2;
  const share = Math.abs((slope * (highV0 - lowV0)) / 2 / Math.sqrt(3) / factor);
  return {
    value: value * factor,
    share,
    words: `rated at ${atV} V, carried to ${toV} V by k (V - V0) with V0 ${lowV0} to ${highV0} V (${origin})`,
  };
}
function throughTwo(quantity: ServoQuantity, ratings: readonly RatingAt[], toV: number): Scaled | Unusable {
  const [low, high] = ratings.toSorted((a, b) => a.atV - b.atV);
  const k = (high.value - low.value) / (high.atV - low.atV);
  const v0 = low.atV - low.value / k;
  if (!(k > 0) || v0 < -0.5 || v0 > low.atV / 2) return notOneLine(quantity, low, high);
  const weight = (toV - low.atV) / (high.atV - low.atV);
  const value = k * (toV - v0);
  const u = (labelRounding / Math.sqrt(3)) * Math.hypot((1 - weight) * low.value, weight * high.value);
  return {
    value,
    share: u / value,
    words: `through the ratings at ${low.atV} and ${high.atV} V by k (V - V0), V0 ${v0.toFixed(2)} V, labels rounded to 1 % (from memory)`,
  };
}
const tooFar = (quantity: ServoQuantity, { atV }: RatingAt, toV: number): Unusable => ({
  unusable: `The ${quantity} rated at ${atV} V is not used at ${toV} V: the model k (V - V0) is trusted only from ${farthestRatio.low} to ${farthestRatio.high} times the rated voltage. Enter the label's rating for ${toV} V.`,
});
const notOneLine = (quantity: ServoQuantity, low: RatingAt, high: RatingAt): Unusable => ({
  unusable: `The ratings of ${quantity} at ${low.atV} and ${high.atV} V do not fit one line k (V - V0) with V0 between -0.5 V and half the lower voltage: are they swapped, or is one from another unit? Look at the label again.`,
});
/** A label's seconds per 60 degrees, carried as the speed they mean. */
export function scaledTime(ratings: readonly RatingAt[], toV: number): Scaled | Unusable {
  const speeds = ratings.map(({ value, atV }) => ({ value: 1 / value, atV }));
  const speed = scaledRating('speed', speeds, toV);
  return 'unusable' in speed ? speed : { ...speed, value: 1 / speed.value };
}
/** Within a fifth of a rated voltage. */
export const noLoadReach = (ratio: number): boolean => ratio >= 0.8 && ratio <= 1.25;
/** A motor's rated no-load current at another voltage: grows between not at all and in proportion (friction does
 *  not grow with speed, eddy losses do; from memory). Within a fifth of the rated voltage, else refused. */
export function scaledNoLoad({ value, atV }: RatingAt, toV: number): Scaled | Unusable {
  const ratio = toV / atV;
  if (Math.abs(toV - atV) < sameV) return { value, share: 0, words: `at ${atV} V` };
  if (!noLoadReach(ratio))
    return {
      unusable: `The no-load current rated at ${atV} V is not used at ${toV} V: it is trusted only within a fifth of its voltage. Enter the label's figure for ${toV} V, or leave it out and let the part set its own baseline.`,
    };
  const factor = (1 + ratio) / 2;
  return {
    value: value * factor,
    share: Math.abs(ratio - 1) / 2 / Math.sqrt(3) / factor,
    words: `rated at ${atV} V, carried to ${toV} V: it grows between not at all and in proportion (from memory, no source)`,
  };
}
