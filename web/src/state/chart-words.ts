// SPDX-License-Identifier: MIT
// A chart in words: which taps it draws, what stands for it where it can't be seen, its table, what is shown and what
// is brushed. Pure; figures carry the person's units.
import { tapTitle } from '#core/samples/tap-titles';
import type { UnitWish } from '#core/units/shown-unit';
import { extremes } from './chart-columns.ts';
import { measured, type Measured, type NoMeasure } from './chart-measure.ts';
import { chartUnit, type ChartUnit } from './chart-units.ts';
import { spanOf, type ChartRange } from './chart-window.ts';
import { figure, twoDigits } from './figures.ts';
import { unitColour } from './quantity-colours.ts';
import type { TapColumns, TraceBook } from './trace-book.svelte.ts';

const order = [
  'packCurrentNarrow',
  'railCurrent',
  'railVoltage',
  'packVoltage',
  'speed',
  'thermistorMotor',
  'thermistorServo',
];
const rank = (tap: string) => (order.includes(tap) ? order.indexOf(tap) : order.length);

/** Everything that was recorded and can be drawn, the telling taps first. */
export function recordedTaps(traces: TraceBook): TapColumns[] {
  void traces.version;
  return traces.taps.filter(({ length }) => length > 1).sort((a, b) => rank(a.tap) - rank(b.tap));
}
/** Taps to draw: those asked for, else up to three of what was recorded. */
export function chartTaps(traces: TraceBook, wanted?: readonly string[]): TapColumns[] {
  const known = recordedTaps(traces);
  const asked = wanted ? known.filter(({ tap }) => wanted.includes(tap) || tap === 'speed') : [];
  return (asked.length > 0 ? asked : known).slice(0, 3);
}
const withUnit = (value: number, { decimals, unit }: ChartUnit) => `${figure(value, decimals)}\u00a0${unit}`;

/** One sentence that stands for a chart. */
export function chartSentence(traces: TraceBook, tap: string, wish: UnitWish): string {
  void traces.version;
  const found = traces.taps.find((each) => each.tap === tap);
  if (!found || found.length === 0) return `${tapTitle(tap)}: nothing recorded yet`;
  if (found.most < found.least) return `${tapTitle(tap)}: ${spanWords(found, wish)}`;
  const lost = traces.gaps.length > 0 ? `, ${traces.gaps.length} gaps` : '';
  return `${tapTitle(tap)} over ${figure(traces.latestS, 0)} s: ${spanWords(found, wish)}${lost}`;
}
/** "from 7.01 V to 7.42 V", or that nothing was inside the tap's range. */
export function spanWords({ unit: si, least, most }: TapColumns, wish: UnitWish): string {
  if (most < least) return 'nothing inside its range';
  const unit = chartUnit(si, wish);
  return `from ${withUnit(unit.value(least), unit)} to ${withUnit(unit.value(most), unit)}`;
}
export interface TableRow {
  readonly title: string;
  readonly least: string;
  readonly mean: string;
  readonly most: string;
}
export function tableRow(found: TapColumns, range: ChartRange, wish: UnitWish): TableRow {
  const { sum, count, least, most } = extremes(found, range);
  const unit = chartUnit(found.unit, wish);
  const say = (si: number) => (count > 0 ? withUnit(unit.value(si), unit) : 'nothing');
  return { title: tapTitle(found.tap), least: say(least), mean: say(sum / count), most: say(most) };
}
export const tapTable = (taps: readonly TapColumns[], range: ChartRange, wish: UnitWish): TableRow[] =>
  taps.map((found) => tableRow(found, range, wish));

/** Decimals of a second that a hundredth of the span shows in. */
const secondDecimals = (span: number) => Math.max(0, Math.min(4, 2 - Math.floor(Math.log10(span))));
export const secondWords = (atS: number, span: number): string =>
  `${figure(atS, secondDecimals(span))}\u00a0s`;

export function windowWords(range: ChartRange, recorded: ChartRange, whole: boolean): string {
  if (whole) return `All of it is shown: ${secondWords(spanOf(recorded), Math.max(spanOf(recorded), 10))}`;
  const [from, to] = [range.fromS, range.toS].map((atS) => secondWords(atS, spanOf(range)));
  return `${from} to ${to} is shown`;
}
export function brushWords({ fromS, toS }: ChartRange): string {
  const span = toS - fromS;
  const [from, to, length] = [fromS, toS, span].map((atS) => secondWords(atS, span));
  return `From ${from} to ${to}: ${length} brushed`;
}
export interface MeasuredRow {
  readonly key: string;
  readonly title: string;
  /** Colour token. */
  readonly colour: string;
  /** Why there is no number; null where there are figures. */
  readonly trouble: string | null;
  readonly figures: readonly { readonly name: string; readonly value: string }[];
}
const troubles: Readonly<Record<NoMeasure, string>> = {
  gap: 'has a gap here, so no number',
  'not scanned': 'was not scanned all along here, so no number',
  'beyond range': 'leaves its range here, so no number',
  'too few': 'has too few values here: brush more',
};
export function measuredRow(
  found: TapColumns,
  gaps: TraceBook['gaps'],
  brush: ChartRange,
  wish: UnitWish,
): MeasuredRow {
  const got = measured(found, gaps, brush);
  const shared = { key: found.tap, title: tapTitle(found.tap), colour: unitColour(found.unit) };
  if (typeof got === 'string') return { ...shared, trouble: troubles[got], figures: [] };
  return { ...shared, trouble: null, figures: figuresOf(got, chartUnit(found.unit, wish)) };
}
export const measuredRows = (
  taps: readonly TapColumns[],
  gaps: TraceBook['gaps'],
  brush: ChartRange,
  wish: UnitWish,
): MeasuredRow[] => taps.map((found) => measuredRow(found, gaps, brush, wish));

/** Peak to peak to two digits at least, the mean to the same place. */
function figuresOf(got: Measured, unit: ChartUnit): MeasuredRow['figures'] {
  const peakToPeak = unit.difference(got.peakToPeak);
  const two = peakToPeak > 0 ? Math.min(6, 1 - Math.floor(Math.log10(peakToPeak))) : 0;
  const places = Math.max(two, unit.decimals);
  const slope = unit.difference(got.slopePerS);
  const sign = slope < 0 ? '\u2212' : '';
  return [
    { name: 'mean', value: `${figure(unit.value(got.mean), places)}\u00a0${unit.unit}` },
    { name: 'peak to peak', value: `${figure(peakToPeak, places)}\u00a0${unit.unit}` },
    { name: 'rms about the mean', value: `${twoDigits(unit.difference(got.rms))}\u00a0${unit.unit}` },
    { name: 'slope', value: `${sign}${twoDigits(Math.abs(slope))}\u00a0${unit.unit}/s` },
  ];
}
/** What is brushed, in one breath. */
export const measuredSentence = (brush: ChartRange, rows: readonly MeasuredRow[]): string =>
  [
    brushWords(brush),
    ...rows.map(({ title, trouble, figures }) =>
      trouble
        ? `${title} ${trouble}`
        : `${title}: ${figures.map(({ name, value }) => `${name} ${value}`).join(', ')}`,
    ),
  ].join('. ');
