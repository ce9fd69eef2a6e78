// SPDX-License-Identifier: MIT
// The logbook to a file and into another one: nothing lost, nothing twice, what differs told; bad files in words.
import { unzipSync, zipSync, strToU8 } from 'fflate';
import { describe, expect, it } from 'vitest';
import { writeBenchFile } from '#core/record/bench-file';
import { Exchange } from './exchange.svelte.ts';
import { keptRecord, keptSummary, type KeptRun } from './kept-run-fixture.ts';
import { Logbook } from './logbook.svelte.ts';
import type { RunSummary } from './run-summary.ts';
import { Repairs } from './repairs.svelte.ts';
import { newcomer } from './shelf-newcomer.ts';
import { marmot, Shelf } from './shelf.svelte.ts';

const at = '2026-11-27T00:00:00.000Z';
const checks = [{ id: 'motor-no-load', title: 'No-load current', part: 'motor' }];
const bench = {
  checks,
  check: (id: string) => checks.find((check) => check.id === id),
  wake: () => {},
} as never;

function memory() {
  const kept = new Map<string, string>();
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  };
}
const repair = { partName: marmot.motor.name, at: '2026-11-20', words: 'new bearings' };
async function page(runs: readonly KeptRun[]) {
  const summaries = new Map<string, RunSummary>();
  const records = new Map<string, unknown>();
  for (const run of runs) {
    const summary = keptSummary(run);
    summaries.set(summary.id, summary);
    records.set(summary.id, keptRecord(run));
  }
  const logbook = new Logbook({
    summaries: () => Promise.resolve([...summaries.values()]),
    record: (id) => Promise.resolve(records.get(id)),
    put: (summary, record) => {
      summaries.set(summary.id, summary);
      if (record !== undefined) records.set(summary.id, record);
      return Promise.resolve();
    },
    remove: (id) => Promise.resolve(void (summaries.delete(id) && records.delete(id))),
  });
  await logbook.load();
  const [shelf, repairs] = [new Shelf(memory()), new Repairs(memory())];
  const exchange = new Exchange({ bench, logbook, shelf, repairs });
  return { logbook, shelf, repairs, summaries, records, exchange };
}
const both: KeptRun[] = [
  { id: 'a', day: 1 },
  { id: 'b', day: 2, value: 3.2 },
];
async function saved(runs = both) {
  const from = await page(runs);
  await from.logbook.note('b', 'after new bearings');
  from.shelf.replace({ ...marmot, name: 'Wombat' });
  from.shelf.act((all) => newcomer(all, 'guestTruck', 'Vole'));
  from.shelf.act((all) => newcomer(all, 'clubMotor', 'Spare'));
  from.repairs.join([repair]);
  return (await from.exchange.save(from.logbook.runs, at)).bytes;
}

describe('a saved logbook', () => {
  it('comes whole into an empty one, notes and car and all', async () => {
    const to = await page([]);
    await to.exchange.look(await saved(), 'all.zip');
    expect(to.exchange.preview?.added.map(({ summary }) => summary.id)).toEqual(['b', 'a']);
    expect(to.logbook.runs, 'nothing before a person says so').toEqual([]);
    await to.exchange.take();
    expect(to.logbook.runs.map(({ id, note }) => [id, note])).toEqual([
      ['b', 'after new bearings'],
      ['a', undefined],
    ]);
    expect(to.records.get('a')).toBe(keptRecord(both[0]));
    expect(to.shelf.car.name).toBe('Wombat');
    expect(to.shelf.content.cars.map(({ name }) => name)).toEqual(['Wombat', 'Vole']);
    expect(to.shelf.content.loose.map(({ part }) => part.name)).toEqual(['Spare']);
    expect(to.repairs.list).toEqual([repair]);
  });
  it('of an older version, with one car and no repairs, is read too', async () => {
    const shelf = {
      version: 1,
      cars: [{ ...marmot, name: 'Old Marmot' }],
      onBench: 'Old Marmot',
      loose: [],
    } as const;
    const to = await page([]);
    to.repairs.join([repair]);
    const file = { shelf: { ...shelf, cars: [...shelf.cars], loose: [] }, runs: both.map(keptRecord) };
    await to.exchange.look(writeBenchFile(file, at), 'older.zip');
    expect(to.exchange.preview?.troubles).toEqual([]);
    expect(to.exchange.cars?.added).toEqual(['Old Marmot']);
    await to.exchange.take();
    expect([to.shelf.car.name, to.logbook.runs.length, to.repairs.list]).toEqual(['Old Marmot', 2, [repair]]);
  });
  it('brings nothing twice, also from a second opening', async () => {
    const to = await page([both[0]]);
    await to.exchange.look(await saved(), 'all.zip');
    expect(to.exchange.preview?.added).toHaveLength(1);
    expect(to.exchange.preview?.same.map(({ id }) => id)).toEqual(['a']);
    await to.exchange.take();
    await to.exchange.look(await saved(), 'all.zip');
    expect(to.exchange.preview).toMatchObject({ added: [], beside: [], notes: [] });
    expect(to.exchange.brings).toBe(false);
  });
  it('puts a run that differs from one of its name beside it, once, and leaves the car that was changed', async () => {
    const to = await page([{ id: 'a', day: 1, value: 9 }]);
    to.shelf.replace({ ...marmot, name: 'Mine' });
    to.repairs.join([{ ...repair, words: 'new brushes' }]);
    for (let time = 0; time < 2; time++) {
      await to.exchange.look(await saved(), 'all.zip');
      await to.exchange.take();
    }
    expect(to.logbook.runs).toHaveLength(3);
    expect(to.records.get('a')).toBe(keptRecord({ id: 'a', day: 1, value: 9 }));
    const beside = to.logbook.runs.find(({ id }) => id.startsWith('a-'))!;
    expect(JSON.parse(to.records.get(beside.id) as string)).toMatchObject({ id: beside.id });
    expect(beside.results[0].value).toBe(3);
    expect(to.shelf.car.name).toBe('Mine');
    expect(to.shelf.content.cars.map(({ name }) => name)).toEqual(['Mine', 'Wombat', 'Vole']);
    expect(
      to.repairs.list.map(({ words }) => words),
      'mine stays',
    ).toEqual(['new brushes']);
  });
  it('keeps both of two runs that share a name in one file, and one of two that are the same', async () => {
    const to = await page([]);
    const runs = [3, 3.2, 3].map((value) => keptRecord({ id: 'a', day: 1, value }));
    await to.exchange.look(writeBenchFile({ shelf: null, runs }, at), 'all.zip');
    await to.exchange.take();
    expect(to.logbook.runs.map(({ results }) => results[0].value).toSorted()).toEqual([3, 3.2]);
  });
  it('leaves a deleted run deleted and tells of it', async () => {
    const to = await page(both);
    await to.logbook.delete('a', at);
    await to.exchange.look(await saved(), 'all.zip');
    expect(to.exchange.preview).toMatchObject({ added: [], sameDeleted: 1 });
    await to.exchange.take();
    expect(to.logbook.deleted.map(({ id }) => id)).toEqual(['a']);
    await to.logbook.putBack('a');
    expect(to.logbook.runs).toHaveLength(2);
  });
  it('joins two notes to one run', async () => {
    const to = await page(both);
    await to.logbook.note('b', 'cold track');
    await to.exchange.look(await saved(), 'all.zip');
    await to.exchange.take();
    expect(to.logbook.find('b')?.note).toBe('cold track\nafter new bearings');
  });
  it('says which runs had no record to save', async () => {
    const from = await page(both);
    from.records.delete('a');
    const { words, bytes } = await from.exchange.save(from.logbook.runs, at);
    expect(words).toBe('1 run saved. 1 run without a whole record could not be put into it.');
    expect(Object.keys(unzipSync(bytes)).filter((name) => name.startsWith('runs/'))).toHaveLength(1);
  });
});
describe('a file that can’t be used', () => {
  it.each([
    ['cut off', async () => (await saved()).slice(0, 900), /cut off or damaged/],
    ['no zip', async () => strToU8('soup'), /it is no zip/],
    ['another zip', async () => zipSync({ 'a.txt': strToU8('a') }), /no bench file/],
    [
      'of a later form',
      async () => zipSync({ 'manifest.json': strToU8('{"format":"bench file","version":2}') }),
      /update this one/,
    ],
    ['a torn record', async () => strToU8(keptRecord().slice(0, 200)), /cut off; export the run again/],
  ])('%s: is told in words, and nothing changes', async (_what, make, words) => {
    const to = await page(both);
    await to.exchange.look(await make(), 'x.zip');
    expect(to.exchange.trouble).toMatch(words);
    expect(to.exchange.preview).toBeNull();
    expect(to.logbook.runs).toHaveLength(2);
  });
  it('with one damaged run in it: the other joins', async () => {
    const files = unzipSync(await saved());
    files['runs/1.json'][40] ^= 1;
    const to = await page([]);
    await to.exchange.look(zipSync(files), 'x.zip');
    expect(to.exchange.preview?.troubles).toEqual([expect.stringMatching(/runs\/1.json: .*checksum/)]);
    expect(to.exchange.preview?.added).toHaveLength(1);
  });
});
