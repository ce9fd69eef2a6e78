// SPDX-License-Identifier: MIT
// Summaries as an earlier page kept them: brought up to date from their records, kept so, and none lost on the way.
import { describe, expect, it } from 'vitest';
import { keptRecord, keptSummary, olderSummary } from './kept-run-fixture.ts';
import { Logbook, type Drawer } from './logbook.svelte.ts';

/** A drawer with these summaries and records in it. */
function drawer(summaries: readonly unknown[], records: Readonly<Record<string, unknown>>) {
  const put: unknown[] = [];
  const kept: Drawer = {
    summaries: () => Promise.resolve([...summaries]),
    record: (id) => Promise.resolve(records[id]),
    put: (summary) => Promise.resolve(void put.push(summary)),
    remove: () => Promise.resolve(),
  };
  return { kept, put };
}
async function loaded(summaries: readonly unknown[], records: Readonly<Record<string, unknown>> = {}) {
  const { kept, put } = drawer(summaries, records);
  const logbook = new Logbook(kept);
  await logbook.load();
  return { logbook, put };
}
describe('a summary of an earlier page', () => {
  it('takes u, budget and the rig’s number from its record, and is kept so', async () => {
    const { logbook, put } = await loaded([olderSummary()], { 'run-1': keptRecord() });
    expect(logbook.runs[0]).toMatchObject({ form: 3, rigSerial: '17' });
    expect(logbook.runs[0].results[0]).toMatchObject({
      u: Math.hypot(0.02, 0.01),
      budget: [
        { source: 'gain of packCurrentNarrow', u: 0.02, dof: null },
        { source: 'noise of this run', u: 0.01, dof: 12 },
      ],
    });
    expect(put).toEqual([logbook.runs[0]]);
    expect(logbook.trouble).toBeNull();
  });
  it.each([
    ['no record beside it', {}],
    ['a damaged record', { 'run-1': '{"format":"soup"}' }],
  ])('with %s stays in the list without them', async (_what, records) => {
    const { logbook } = await loaded([olderSummary()], records);
    expect(logbook.runs[0].results[0]).toMatchObject({ value: 3 });
    expect(logbook.runs[0].results[0].budget).toBeUndefined();
    expect(logbook.runs[0].rigSerial).toBeUndefined();
  });
  it('that never ended still never ended', async () => {
    const { endedAt: _ended, ...cut } = olderSummary();
    const { logbook } = await loaded([cut], { 'run-1': keptRecord() });
    expect(logbook.broken(logbook.runs[0])).toBe(true);
  });
  it('beside one of today and a damaged one: two are there, one is told', async () => {
    const { logbook, put } = await loaded([keptSummary({ id: 'b', day: 2 }), olderSummary(), { id: 3 }]);
    expect(logbook.runs.map(({ id }) => id)).toEqual(['b', 'run-1']);
    expect(put).toHaveLength(1);
    expect(logbook.trouble).toMatch(/1 of 3 runs could not be read/);
  });
});
