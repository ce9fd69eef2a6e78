// SPDX-License-Identifier: MIT
// The brushed stretch of a chart: its two edges, always in order and inside of what is recorded. Pure; seconds of
// rig time.
import { clamped, closestS, panned, spanOf, type ChartRange } from './chart-window.ts';

export type Edge = 'from' | 'to';

/** The middle third of what is shown and recorded; null where nothing of it is recorded yet. */
export function firstBrush(shown: ChartRange, recorded: ChartRange): ChartRange | null {
  const fromS = Math.max(shown.fromS, recorded.fromS);
  const third = (Math.min(shown.toS, recorded.toS) - fromS) / 3;
  return third > 0 ? { fromS: fromS + third, toS: fromS + 2 * third } : null;
}
/** Between two seconds in either order. */
export function brushBetween(aS: number, bS: number, recorded: ChartRange): ChartRange {
  const kept = (atS: number) => clamped(atS, recorded.fromS, recorded.toS);
  return { fromS: kept(Math.min(aS, bS)), toS: kept(Math.max(aS, bS)) };
}
/** An edge stops short of the other by the closest look. */
export function edgeMoved(brush: ChartRange, edge: Edge, atS: number, recorded: ChartRange): ChartRange {
  if (edge === 'from')
    return { ...brush, fromS: clamped(atS, recorded.fromS, Math.max(recorded.fromS, brush.toS - closestS)) };
  return { ...brush, toS: clamped(atS, Math.min(recorded.toS, brush.fromS + closestS), recorded.toS) };
}
export const nearestEdge = ({ fromS, toS }: ChartRange, atS: number): Edge =>
  Math.abs(atS - fromS) <= Math.abs(atS - toS) ? 'from' : 'to';

export const brushPanned = (brush: ChartRange, byS: number, recorded: ChartRange): ChartRange =>
  panned(brush, byS, recorded);

/** Both edges outwards by half of `byS`, inwards when it is negative, as far as there is record. */
export function brushWidened(brush: ChartRange, byS: number, recorded: ChartRange): ChartRange {
  const middle = (brush.fromS + brush.toS) / 2;
  const half = Math.max(spanOf(brush) + byS, closestS) / 2;
  return brushBetween(middle - half, middle + half, recorded);
}
