// SPDX-License-Identifier: MIT
// A record opened for reading: its summary line and what it found. The text is read by the core's reader, which says in words what is wrong with one that can't be read.
import type { PartKind } from '#checks/check';
import { runEnd, type RunEnd } from '#checks/plans/outcomes';
import { runFindingsOf } from '#core/history/record-findings';
import { readRecord } from '#core/record/record-reader';
import type { RunRecord } from '#core/record/run-record';
import { tapsNamed } from '#core/samples/tap-titles';
import { summaryForm, type RunSummary } from './run-summary.ts';
import { resultLines, type JudgedRecord } from './result-line.ts';

export interface OpenedRun extends JudgedRecord {
  readonly text: string;
  readonly summary: RunSummary;
  /** What was told of the calibration of the taps it used: old ones, missing ones. */
  readonly calibration: readonly string[];
  /** As a plan tells it. */
  readonly end: RunEnd;
  /** How the run ended when not by itself. */
  readonly cut: {
    readonly kind: 'stopped' | 'tripped' | 'link lost' | 'failed';
    readonly words: string;
  } | null;
}
/** What a record does not hold: how its check is called now, and which rig it was in words. */
export interface Naming {
  readonly title: string;
  readonly part: PartKind;
  readonly rig: string;
}
function summaryOf(record: RunRecord, naming: Naming): RunSummary {
  const { partName, partId, rigSerial } = runFindingsOf(record, naming.part);
  const carId = record.car.id;
  return {
    form: summaryForm,
    id: record.id,
    startedAt: record.startedAt,
    endedAt: record.startedAt,
    checkId: record.check,
    checkTitle: naming.title,
    part: naming.part,
    car: record.car.name,
    ...(carId !== undefined && { carId }),
    partName,
    ...(partId !== undefined && { partId }),
    rig: naming.rig,
    rigSerial,
    event: record.ending.kind === 'done' ? undefined : record.ending.words,
    results: resultLines(record),
  };
}
/** Throws RecordError. */
export function openRun(text: string, naming: Naming): OpenedRun {
  const record = readRecord(text);
  const { kind, words } = record.ending;
  return {
    text,
    summary: summaryOf(record, naming),
    findings: record.findings,
    judged: record.judged,
    calibration: record.events
      .filter((event) => event.kind === 'calibration')
      .map((event) => tapsNamed(event.words)),
    end: runEnd(record),
    cut: kind === 'done' ? null : { kind, words },
  };
}
/** Which check a saved record is of, before it is opened whole. Throws RecordError. */
export const checkOf = (text: string): string => readRecord(text).check;

/** "marmot-rail-sag-2031-05-04-1842.json": a name that sorts by time on any computer. */
export function fileName(summary: RunSummary): string {
  const when = summary.startedAt.slice(0, 16).replace('T', '-').replace(':', '');
  const car = summary.car.toLowerCase().replace(/[^a-z0-9]+/g, '-');
  return `${car}-${summary.checkId}-${when}.json`;
}
