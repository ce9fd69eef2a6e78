// SPDX-License-Identifier: MIT
// A run written as it goes: what was written becomes a record that is not measured, torn parts end it, and storage
// that fails is told once and stops nothing.
import { describe, expect, it } from 'vitest';
import { testRig } from '#core/samples/scan-block-fixture';
import { readRecord, samplesOf, writeRecord } from '#core/record/record-reader';
import { unpackColumns } from '#core/record/packed-columns';
import { packColumns } from '#core/record/packed-columns';
import type { ScanBlock } from '#core/samples/scan-block';
import type { RigSession } from '#session/rig-session';
import { Listeners } from '#session/listeners';
import { marmot, syntheticRun } from '../checks/synthetic-run-fixture.ts';
import type { JournalStore } from '../adapters/journal-store.ts';
import { RunJournal } from './run-journal.ts';

class MapStore implements JournalStore {
  head: unknown;
  parts: unknown[] = [];
  broken = false;
  begin = (head: unknown) => this.write(() => void (this.head = structuredClone(head)));
  append = (_: string, part: number, columns: unknown) => this.write(() => void (this.parts[part] = columns));
  read = () => Promise.resolve({ head: this.head, parts: this.parts });
  remove = () => this.write(() => void (this.parts = []));
  private write(act: () => void): Promise<void> {
    if (this.broken) return Promise.reject(new Error('quota'));
    act();
    return Promise.resolve();
  }
}
const run = syntheticRun({
  tap: () => 1,
  feedOnS: 0.5,
  endS: 2,
  fast: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
});
const blocks = [...unpackColumns(packColumns(run.raw))] as ScanBlock[];

function bench(broken = false) {
  const store = Object.assign(new MapStore(), { broken });
  const told: string[] = [];
  let nowMs = 0;
  const journal = new RunJournal(
    store,
    () => nowMs,
    (words) => told.push(words),
  );
  const listeners = new Listeners<ScanBlock>();
  const session = { rig: testRig(), firmware: '1.2.3', blocks: listeners } as unknown as RigSession;
  const head = { runId: 'run 1', check: 'rail-sag', startedAt: '2026-01-01T00:00:00.000Z', car: marmot };
  const go = (count: number) => {
    for (const block of blocks.slice(0, count)) {
      listeners.tell(block);
      nowMs += 8;
      journal.pass();
    }
  };
  return { store, told, journal, begin: () => journal.begin(session, head), go };
}
describe('the journal of a run', () => {
  it('loses at most a second of what came, and the record says why it is not measured', async () => {
    const { journal, begin, go } = bench();
    begin();
    go(blocks.length);
    const record = (await journal.recover('run 1'))!;
    expect(record.ending.words).toMatch(/page went away/);
    expect(record.verdict).toBe('not measured');
    const kept = samplesOf(readRecord(writeRecord(record)));
    expect(run.latestS - kept.latestS).toBeLessThan(1);
    expect(kept.latestS).toBeGreaterThan(0.5);
    expect(kept.gaps).toEqual([]);
  });
  it('keeps what stands before a torn part', async () => {
    const { journal, store, begin, go } = bench();
    begin();
    go(blocks.length);
    store.parts[1] = { blocks: 'many' };
    expect(samplesOf((await journal.recover('run 1'))!).latestS).toBeGreaterThan(0.3);
  });
  it('has nothing to tell of a run that it never began', async () =>
    expect(await bench().journal.recover('run 1')).toBeNull());
  it('tells once that it can not write, and leaves the run alone', async () => {
    const { told, begin, go } = bench(true);
    begin();
    await Promise.resolve();
    await Promise.resolve();
    go(200);
    expect(told).toEqual([expect.stringMatching(/could not keep the run.*quota/)]);
  });
  it('is gone once the page has the record', async () => {
    const { journal, store, begin, go } = bench();
    begin();
    go(blocks.length);
    journal.end();
    await journal.forget('run 1');
    expect(store.parts).toEqual([]);
  });
});
