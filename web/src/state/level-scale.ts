// SPDX-License-Identifier: MIT
// How far a plot's amount axis goes, with the lines of results that are drawn on it, and where the words at their ends
// stand so that none lies over another. Pure; amounts in the axis's unit, places in pixels from the top.
import type { LevelLines } from './chart-levels.ts';

export type Amounts = readonly [low: number, high: number];

/** Times that lines may stretch the axis beyond what the trace takes: the evidence of one result, a whole record. */
export const stretchedAtMost = { still: 24, whole: 6 } as const;

/** Of the trace alone, a hundredth of its size at least. */
function ofTrace(least: number, most: number): Amounts {
  const lack = (Math.max(Math.abs(most) * 0.01, 0.01) - (most - least)) / 2;
  return lack > 0 ? [least - lack, most + lack] : [least, most];
}
/** The lines nearest to the trace first, as long as the axis does not grow beyond `mostTimes` of the trace. */
function withLines(trace: Amounts, lines: readonly LevelLines[], mostTimes: number): Amounts {
  const [least, most] = trace;
  const away = (at: number) => Math.max(least - at, at - most, 0);
  const near = amountsOf(lines).toSorted((a, b) => away(a) - away(b));
  return near.reduce(([low, high], at) => {
    const wider: Amounts = [Math.min(low, at), Math.max(high, at)];
    return wider[1] - wider[0] <= mostTimes * (most - least) ? wider : ([low, high] as const);
  }, trace);
}
const amountsOf = (lines: readonly LevelLines[]): number[] =>
  lines.flatMap(({ value, limits }) => [
    ...(value ? [value.at, ...value.interval] : []),
    ...limits.map(({ at }) => at),
  ]);

/** With head room for the plot's name, which stands inside at its top. */
export function amountScale(
  least: number | null,
  most: number | null,
  lines: readonly LevelLines[],
  mostTimes: number,
): [number, number] {
  if (least === null || most === null) return [0, 1];
  const [low, high] = withLines(ofTrace(least, most), lines, mostTimes);
  const span = high - low;
  return [low - 0.1 * span, high + 0.4 * span];
}
/** Height of a line of words. */
const row = 16;
const above = -5;
const below = 14;

export interface WantedWords {
  /** Of their line. */
  readonly y: number;
  /** Nothing may stand above it there. */
  readonly top: number;
  /** They may stand rows away from their line rather than nowhere. */
  readonly needed: boolean;
}
/** Baselines of words, the more important ones first: above their line, else below, else some rows further where they
 *  are needed; null for those that find no place. */
export function placedBaselines(wanted: readonly WantedWords[], bottom: number): (number | null)[] {
  const taken: number[] = [];
  return wanted.map(({ y: lineY, top, needed }) => {
    const free = places(lineY, needed).find(
      (y) => y - 12 >= top && y + 3 <= bottom && taken.every((other) => Math.abs(other - y) >= row - 1),
    );
    if (free !== undefined) taken.push(free);
    return free ?? null;
  });
}
const places = (lineY: number, needed: boolean): number[] =>
  [above, below, ...(needed ? further : [])].map((by) => lineY + by);
const further = [above - row, below + row, below + 2 * row, below + 3 * row];
