// SPDX-License-Identifier: MIT
// A record as comma-separated tables for other programs (RFC 4180): its results, and its samples scaled to SI.
// It writes text; it reads nothing back.
import type { RunRecord } from './run-record.ts';
import { samplesOf } from './record-reader.ts';

const lineEnd = '\r\n';
const cell = (value: string | number | undefined): string => {
  const text = value === undefined ? '' : String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};
const row = (...cells: readonly (string | number | undefined)[]): string =>
  cells.map(cell).join(',') + lineEnd;

/** One line a result. */
export function resultsCsv(record: RunRecord): string {
  const head = row(
    'check',
    'result',
    'value',
    'unit',
    'low_95',
    'high_95',
    'limit_min',
    'limit_max',
    'limit_kind',
    'limit_source',
    'verdict',
    'note',
  );
  const lines = record.findings.map((finding) => {
    const judged = record.judged.find(({ id }) => id === finding.id);
    const figures = finding.measured
      ? [finding.value, finding.unit, ...finding.interval]
      : ['', finding.unit, '', ''];
    const limit = judged?.limit;
    const words = finding.measured ? judged?.note : finding.reason;
    return row(
      record.check,
      finding.id,
      ...figures,
      limit?.min,
      limit?.max,
      limit?.kind,
      limit?.source,
      judged?.verdict ?? 'not measured',
      words,
    );
  });
  return head + lines.join('');
}
/** One line a value: rig time, tap, value, unit; taps in the order of the rig's description, gaps after them. */
export function samplesCsv(record: RunRecord): string {
  const samples = samplesOf(record);
  const lines = [row('time_s', 'tap', 'value', 'unit')];
  for (const { id, unit } of record.rig.descriptor.taps) {
    const { timeS, value } = samples.series(id, 0, Number.MAX_VALUE);
    timeS.forEach((atS, i) => lines.push(row(atS.toFixed(6), id, Number(value[i].toPrecision(7)), unit)));
  }
  for (const gap of samples.gaps) lines.push(row(gap.fromS.toFixed(6), 'gap', gap.scans, 'scans lost'));
  return lines.join('');
}
