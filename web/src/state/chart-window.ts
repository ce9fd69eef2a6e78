// SPDX-License-Identifier: MIT
// The part of the time axis that a chart shows, and how panning, zooming, pinching and following the live end change
// it. Pure; seconds of rig time, shares of the shown width from 0 (left) to 1 (right).

export interface ChartRange {
  readonly fromS: number;
  readonly toS: number;
}
/** The closest look: two rows of the stream, which come every 0.936 ms. */
export const closestS = 0.002;
/** Where the newest value stands while the picture follows it, as a share of the width. */
const liveShare = 0.9;

export const spanOf = ({ fromS, toS }: ChartRange): number => toS - fromS;
export const secondAt = (range: ChartRange, share: number): number => range.fromS + share * spanOf(range);
export const shareOf = (range: ChartRange, atS: number): number => (atS - range.fromS) / spanOf(range);
export const holds = (range: ChartRange, atS: number): boolean => atS >= range.fromS && atS <= range.toS;
export const clamped = (value: number, least: number, most: number): number =>
  Math.min(Math.max(value, least), most);

/** As wide as asked, no wider than the bounds, moved inside them. */
export function inside(range: ChartRange, bounds: ChartRange): ChartRange {
  const span = clamped(spanOf(range), Math.min(closestS, spanOf(bounds)), spanOf(bounds));
  const fromS = clamped(range.fromS, bounds.fromS, bounds.toS - span);
  return { fromS, toS: fromS + span };
}
export const panned = (range: ChartRange, byS: number, bounds: ChartRange): ChartRange =>
  inside({ fromS: range.fromS + byS, toS: range.toS + byS }, bounds);

/** `factor` below 1 looks closer; the second at `share` of the width stays where it is. */
export function zoomed(range: ChartRange, factor: number, share: number, bounds: ChartRange): ChartRange {
  const span = clamped(spanOf(range) * factor, closestS, spanOf(bounds));
  const fromS = secondAt(range, share) - share * span;
  return inside({ fromS, toS: fromS + span }, bounds);
}
/** Two fingers that lay on two shares of `range` and lie on two others now: each keeps its second. */
export function pinched(
  range: ChartRange,
  before: readonly [number, number],
  now: readonly [number, number],
  bounds: ChartRange,
): ChartRange {
  const apart = now[1] - now[0];
  if (Math.abs(apart) < 0.01 || (before[1] - before[0]) * apart <= 0) return range;
  const span = (spanOf(range) * (before[1] - before[0])) / apart;
  const fromS = secondAt(range, before[0]) - now[0] * span;
  return inside({ fromS, toS: fromS + span }, bounds);
}
/** Moved on so that the newest value stays in sight. */
export function followed(range: ChartRange, latestS: number): ChartRange {
  const late = latestS - secondAt(range, liveShare);
  return late <= 0 ? range : { fromS: range.fromS + late, toS: range.toS + late };
}
/** Around a stretch, with room at either side to see where it begins and ends. */
export function around(stretch: ChartRange, bounds: ChartRange): ChartRange {
  const room = Math.max(0.6 * spanOf(stretch), 0.05);
  return {
    fromS: Math.max(bounds.fromS, stretch.fromS - room),
    toS: Math.min(bounds.toS, stretch.toS + room),
  };
}
