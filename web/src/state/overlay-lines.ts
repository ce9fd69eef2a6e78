// SPDX-License-Identifier: MIT
// Several runs of one tap over each other: a line each, their marks with the run's letter, what a brushed stretch of
// each amounts to, and all of it in words. Pure.
import { tapTitle } from '#core/samples/tap-titles';
import type { UnitWish } from '#core/units/shown-unit';
import { chartUnit } from './chart-units.ts';
import type { ChartRange } from './chart-window.ts';
import { measuredRow, spanWords, tableRow, type MeasuredRow, type TableRow } from './chart-words.ts';
import type { ComparedRun } from './compared-run.ts';
import type { Letter } from './comparison.svelte.ts';
import { unitColour } from './quantity-colours.ts';
import type { Gap, TapColumns, TraceMark } from './trace-book.svelte.ts';

/** A in the quantity's colour and solid; the others in ink, told apart by their dashes. */
const dashes: Readonly<Record<Letter, readonly number[]>> = { A: [], B: [9, 4], C: [2, 4], D: [9, 4, 2, 4] };

export interface OverlayLine {
  readonly id: string;
  readonly letter: Letter;
  readonly columns: TapColumns;
  readonly gaps: readonly Gap[];
  readonly marks: readonly TraceMark[];
  /** Colour token. */
  readonly colour: string;
  readonly dash: readonly number[];
}
/** Of the runs that have the tap, A first. */
export function overlayLines(
  runs: readonly ComparedRun[],
  tap: string,
  letterOf: (id: string) => Letter | null,
): OverlayLine[] {
  return runs.flatMap(({ id, traces }) => {
    const columns = traces.taps.find((each) => each.tap === tap && each.length > 0);
    const letter = letterOf(id);
    if (!columns || !letter) return [];
    const colour = letter === 'A' ? unitColour(columns.unit) : '--ink';
    return [{ id, letter, columns, gaps: traces.gaps, marks: traces.marks, colour, dash: dashes[letter] }];
  });
}
/** As far as any of them is recorded. */
export const overlayExtent = (lines: readonly OverlayLine[]): ChartRange => ({
  fromS: Math.min(0, ...lines.map(({ columns }) => columns.timeS[0])),
  toS: Math.max(0, ...lines.map(({ columns }) => columns.timeS[columns.length - 1])),
});
export interface OverlayMark extends TraceMark {
  readonly dash: readonly number[];
}
/** Going live is the same second for all; every other mark names its run. */
export function overlayMarks(lines: readonly OverlayLine[]): OverlayMark[] {
  const live = lines.flatMap(({ marks }) => marks.filter(({ label }) => label === 'live')).slice(0, 1);
  const others = lines.flatMap(({ letter, marks, dash }) =>
    marks
      .filter(({ label }) => label !== 'live')
      .map(({ atS, label }) => ({ atS, label: `${letter} ${label}`, dash })),
  );
  return [...live.map((mark) => ({ ...mark, dash: [] })), ...others];
}
export const overlayRows = (
  lines: readonly OverlayLine[],
  brush: ChartRange,
  wish: UnitWish,
): MeasuredRow[] =>
  lines.map(({ letter, columns, gaps, colour }) => ({
    ...measuredRow(columns, gaps, brush, wish),
    key: letter,
    title: letter,
    colour,
  }));

export const overlayTable = (lines: readonly OverlayLine[], range: ChartRange, wish: UnitWish): TableRow[] =>
  lines.map(({ letter, columns }) => ({ ...tableRow(columns, range, wish), title: letter }));

export function overlayTitle([first]: readonly OverlayLine[], wish: UnitWish): string {
  const { tap, unit } = first.columns;
  return `${tapTitle(tap)}, ${chartUnit(unit, wish).unit}`;
}
/** One sentence that stands for the chart. */
export function overlaySentence(lines: readonly OverlayLine[], wish: UnitWish): string {
  const { tap } = lines[0].columns;
  const runs = lines.map(({ letter, columns }) => `${letter} ${spanWords(columns, wish)}`);
  return `${tapTitle(tap)} of ${lines.map(({ letter }) => letter).join(', ')} over the seconds since the rig went live: ${runs.join('; ')}`;
}
