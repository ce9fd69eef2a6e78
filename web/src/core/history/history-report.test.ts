// SPDX-License-Identifier: MIT
// The whole story of a part's result from its runs: waiting, baseline, change, drift, repair.
import { describe, expect, it } from 'vitest';
import { runOf } from './history-fixture.ts';
import { historyReport } from './history-report.ts';
import { runFindingsOf } from './record-findings.ts';

const key = 'motor-no-load/no-load-current';
const part = 'Gravel Wren 13.5';
const report = (values: readonly number[], repairs: Parameters<typeof historyReport>[3] = []) =>
  historyReport(
    values.map((value, i) => runOf(value, i)),
    { partName: part },
    key,
    repairs,
  );
const first = [3.0, 3.04, 2.98, 3.02, 2.99];

describe('report', () => {
  it('waits for the fifth run', () =>
    expect(report(first.slice(0, 4)).words).toEqual([
      '4 of the 5 runs that make a baseline. 1 more, none of them failed.',
    ]));
  it('has a baseline and nothing to compare after the fifth', () =>
    expect(report(first)).toMatchObject({
      baseline: { ready: true },
      change: null,
      words: ['No run since the baseline.'],
    }));
  it('says by how much the last run differs and that it is a step', () =>
    expect(report([...first, 3.4, 3.42]).words).toEqual([
      expect.stringMatching(/^Changed by \+0\.41\d* ± 0\.0\d+ A since its first 5 runs\. Left out, as both/),
      expect.stringMatching(/^It stepped by \+0\.4 A after run 5\./),
    ]));
  it('begins anew at a repair and compares with nothing before it', () => {
    const repaired = report(
      [...first, 3.4, 3.42],
      [{ partName: part, at: '2026-11-06', words: 'new bearings' }],
    );
    expect(repaired.words).toEqual([
      'Its history begins anew on 2026-11-06: new bearings.',
      '2 of the 5 runs that make a baseline. 3 more, none of them failed.',
    ]);
    expect(repaired.earlier).toHaveLength(5);
  });
  it('of a part that has no run says so', () =>
    expect(historyReport([], { partName: part }, key).words[0]).toMatch(/^0 of the 5 runs/));
});
describe('from a record', () => {
  const record = {
    id: 'run-1',
    check: 'motor-no-load',
    startedAt: '2026-11-01T19:00:00Z',
    car: { motor: { name: part } },
    rig: { store: { serial: '17' } },
    findings: runOf(3, 0).findings,
    judged: [{ id: 'no-load-current', verdict: 'fail' }],
  } as unknown as Parameters<typeof runFindingsOf>[0];
  it('come part, rig and verdicts', () =>
    expect(runFindingsOf(record, 'motor')).toMatchObject({
      runId: 'run-1',
      partName: part,
      rigSerial: '17',
      verdicts: { 'no-load-current': 'fail' },
    }));
  it('a virtual rig goes by its seed, a rig without a store has no number', () => {
    expect(runFindingsOf({ ...record, virtual: { seed: 4, faults: {}, truth: {} } }, 'motor').rigSerial).toBe(
      'virtual 4',
    );
    expect(runFindingsOf({ ...record, rig: { ...record.rig, store: null } }, 'motor').rigSerial).toBe('');
  });
});
