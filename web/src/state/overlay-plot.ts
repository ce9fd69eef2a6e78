// SPDX-License-Identifier: MIT
// Several runs of one tap over each other as geometry: in each column of pixels the least and the most value, so that
// no peak is lost; a line ends at a gap. Pure.
import type { ComparedRun } from './compared-run.ts';
import { chartUnit, type Temperature } from './chart-units.ts';
import { figure } from './figures.ts';
import { niceSteps, stepDecimals } from './verdict-picture.ts';

export interface OverlayTick {
  readonly at: number;
  readonly text: string;
}
export interface OverlayPlot {
  readonly symbol: string;
  readonly paths: readonly { readonly id: string; readonly path: string }[];
  readonly xTicks: readonly OverlayTick[];
  readonly yTicks: readonly OverlayTick[];
  /** Where the rig went live. */
  readonly liveX: number;
}
export interface OverlaySize {
  readonly width: number;
  readonly height: number;
}
export const overlayEdges = { left: 52, right: 10, top: 12, bottom: 26 } as const;

/** Null where no run has the tap. */
export function overlayPlot(
  runs: readonly ComparedRun[],
  tap: string,
  size: OverlaySize,
  temperature: Temperature,
): OverlayPlot | null {
  const lines = runs.flatMap((run) => {
    const found = run.taps.find((each) => each.tap === tap);
    return found ? [{ ...found, id: run.id, gapsS: run.gapsS }] : [];
  });
  if (lines.length === 0) return null;
  const unit = chartUnit(lines[0].unit, temperature);
  const [fromS, toS] = extent(lines.map(({ timeS }) => timeS));
  const [least, most] = extent(lines.map(({ value }) => value)).map(unit.value);
  const room = 0.06 * (most - least || Math.abs(most) || 1);
  const [low, high] = [least - room, most + room];
  const { left, right, top, bottom } = overlayEdges;
  const span = toS - fromS || 1;
  const x = (atS: number) => left + ((atS - fromS) / span) * (size.width - left - right);
  const y = (shown: number) => top + ((high - shown) / (high - low)) * (size.height - top - bottom);
  const paths = lines.map((line) => ({ id: line.id, path: linePath(line, x, (si) => y(unit.value(si))) }));
  return {
    symbol: unit.symbol,
    paths,
    xTicks: ticks(fromS, toS, x),
    yTicks: ticks(low, high, y),
    liveX: x(0),
  };
}
function extent(columns: readonly Float64Array[]): [number, number] {
  let [least, most] = [Infinity, -Infinity];
  for (const column of columns)
    for (const value of column) {
      if (value < least) least = value;
      if (value > most) most = value;
    }
  return [least, most];
}
function ticks(low: number, high: number, place: (value: number) => number): OverlayTick[] {
  const steps = niceSteps(low, high);
  const some = steps.length > 6 ? steps.filter((_, i) => i % 2 === 0) : steps;
  const decimals = stepDecimals(steps[1] - steps[0]);
  return some.map((step) => ({ at: place(step), text: figure(step, decimals) }));
}
interface Line {
  readonly timeS: Float64Array;
  readonly value: Float64Array;
  readonly gapsS: readonly number[];
}
interface Column {
  readonly pixel: number;
  least: number;
  most: number;
  readonly begins: boolean;
}
function linePath(line: Line, x: (atS: number) => number, y: (si: number) => number): string {
  return columnsOf(line, x)
    .map(({ pixel, least, most, begins }) => {
      const first = `${begins ? 'M' : 'L'}${pixel} ${y(least).toFixed(1)}`;
      return most > least ? `${first}L${pixel} ${y(most).toFixed(1)}` : first;
    })
    .join('');
}
function columnsOf({ timeS, value, gapsS }: Line, x: (atS: number) => number): Column[] {
  const columns: Column[] = [];
  let gap = 0;
  timeS.forEach((atS, i) => {
    const lost = gap < gapsS.length && atS > gapsS[gap];
    while (gap < gapsS.length && atS > gapsS[gap]) gap += 1;
    const pixel = Math.round(x(atS));
    const last = columns.at(-1);
    if (!last || lost || last.pixel !== pixel)
      columns.push({ pixel, least: value[i], most: value[i], begins: !last || lost });
    else {
      last.least = Math.min(last.least, value[i]);
      last.most = Math.max(last.most, value[i]);
    }
  });
  return columns;
}
