// SPDX-License-Identifier: MIT
// For tests: a whole record as text, with one measured result, and the summaries that the page keeps of such runs.
import { budgetLine, measuredAs } from '#core/history/history-fixture';
import type { Car } from '#core/parts/part';
import { packColumns } from '#core/record/packed-columns';
import { writeRecord } from '#core/record/record-reader';
import { recordFormat, recordVersion, type RunRecord } from '#core/record/run-record';
import { scanBlock, testRig } from '#core/samples/scan-block-fixture';
import { ScanColumns } from '#core/samples/scan-columns';
import { openRun } from './opened-run.ts';
import type { RunSummary } from './run-summary.ts';
import { marmot } from './shelf.svelte.ts';

const naming = { title: 'No-load current', part: 'motor', rig: '17' } as const;

export interface KeptRun {
  readonly id?: string;
  readonly day?: number;
  readonly value?: number;
  readonly car?: Car;
  readonly serial?: string;
  readonly verdict?: 'pass' | 'fail';
  readonly virtual?: RunRecord['virtual'];
}
export function keptRecord(run: KeptRun = {}): string {
  const { id = 'run-1', day = 1, value = 3, car = marmot, serial = '17', verdict = 'pass', virtual } = run;
  const rig = { ...testRig(), store: { serial, name: '', calibration: [] } };
  const samples = new ScanColumns(rig);
  for (let k = 0; k < 4; k++) samples.push(scanBlock({ scan: k * 8, tick: k * 14976, codes: { a: 750 } }));
  const finding = measuredAs(value, [
    budgetLine('gain of packCurrentNarrow', 0.02),
    budgetLine('noise of this run', 0.01, { shape: 'student', dof: 12 }),
  ]);
  const limit = { max: 3.9, unit: 'A', kind: 'rating', source: 'label of the motor' } as const;
  return writeRecord({
    format: recordFormat,
    version: recordVersion,
    id,
    check: 'motor-no-load',
    startedAt: `2026-11-${String(day).padStart(2, '0')}T18:00:00.000Z`,
    ending: { kind: 'done', words: 'The check ran to its end.' },
    software: { tool: 'test', firmware: '1' },
    car,
    rig,
    clock: samples.clock,
    raw: packColumns(samples.raw),
    marks: [],
    events: [{ atS: 0, kind: 'calibration', words: 'Not calibrated: packCurrentNarrow.' }],
    evidence: null,
    findings: [finding] as RunRecord['findings'],
    judged: [{ id: 'no-load-current', limit, verdict }],
    verdict,
    ...(virtual && { virtual }),
  });
}
export const keptSummary = (run: KeptRun = {}): RunSummary => openRun(keptRecord(run), naming).summary;

/** As the page kept it before parts had identities. */
export function secondFormSummary(run: KeptRun = {}): Record<string, unknown> {
  const { partId: _part, carId: _car, ...summary } = keptSummary(run);
  return { ...summary, form: 2 };
}
/** As the first version of the page kept it. */
export function olderSummary(run: KeptRun = {}): Record<string, unknown> {
  const { form: _form, rigSerial: _serial, results, ...summary } = keptSummary(run);
  return { ...summary, results: results.map(({ u: _u, budget: _budget, ...line }) => line) };
}
