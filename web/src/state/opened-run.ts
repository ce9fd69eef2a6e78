// SPDX-License-Identifier: MIT
// A record opened for reading: its summary line and every result as the verdict screen shows it.
import type { Finding } from '#core/measurements/measurement';
import type { Judged } from '#core/verdicts/limit';
import type { RunSummary } from './run-summary.ts';
import { resultLine, resultView, type ResultView } from './verdict-view.ts';

export interface OpenedRun {
  readonly record: unknown;
  readonly summary: RunSummary;
  readonly results: readonly ResultView[];
}
interface Judgement {
  readonly findings: readonly Finding[];
  readonly judged: readonly Judged[];
  readonly event?: string;
}
export function openRun(record: unknown, summary: RunSummary): OpenedRun {
  const { findings, judged, event } = record as Judgement;
  const of = (id: string) => judged.find((each) => each.id === id);
  return {
    record,
    summary: { ...summary, event, results: findings.map((finding) => resultLine(finding, of(finding.id))) },
    results: findings.map((finding) => resultView(finding, of(finding.id))),
  };
}
export function readRecordFile(_text: string): { opened: OpenedRun; record: unknown } {
  throw new Error('not a record');
}
/** "marmot-rail-sag-2031-05-04-1842.json": a name that sorts by time on any computer. */
export function fileName(summary: RunSummary): string {
  const when = summary.startedAt.slice(0, 16).replace('T', '-').replace(':', '');
  const car = summary.car.toLowerCase().replace(/[^a-z0-9]+/g, '-');
  return `${car}-${summary.checkId}-${when}.json`;
}
