// SPDX-License-Identifier: MIT
// The stretch of a record that a result came from, as a chart of the sheet.
import { readRecord, samplesOf } from '#core/record/record-reader';
import { tapTitle } from '#core/samples/tap-titles';
import { chartUnit } from '../chart-units.ts';
import { chosenUnits } from '../chosen-units.ts';
import { chartSvg } from './sheet-chart.ts';
import type { SheetChartView } from './sheet-html.ts';

/** Seconds shown before and after the stretch. */
const roomS = 1;

/** Null where the result has no number or the record no samples of it. Throws RecordError. */
export function recordChart(text: string, resultId: string): SheetChartView | null {
  const record = readRecord(text);
  const finding = record.findings.find(({ id }) => id === resultId);
  const stretch = finding?.measured ? finding.evidence[0] : undefined;
  const tap = record.rig.descriptor.taps.find(({ id }) => id === stretch?.taps[0]);
  if (!finding || !stretch || !tap) return null;
  const series = samplesOf(record).series(tap.id, stretch.fromS - roomS, stretch.toS + roomS);
  const { unit, value } = chartUnit(tap.unit, chosenUnits());
  const title = `${tapTitle(tap.id)}, ${unit}`;
  const svg = chartSvg({ title, unit, series: { ...series, value: series.value.map(value) } });
  return svg === null ? null : { title, svg, words: `${finding.title}: the stretch it came from.` };
}
