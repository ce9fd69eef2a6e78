// SPDX-License-Identifier: MIT
// The logbook to a file and into another one: nothing lost, nothing twice, what differs told; bad files in words.
import { unzipSync, zipSync, strToU8 } from 'fflate';
import { describe, expect, it } from 'vitest';
import { partRefOf } from '#core/parts/part';
import { writeBenchFile } from '#core/record/bench-file';
import { plainRun } from '#core/record/record-identity';
import { exchangePage as page } from './exchange-fixture.ts';
import { keptRecord, type KeptRun } from './kept-run-fixture.ts';
import { newcomer } from './shelf-newcomer.ts';
import { marmot } from './shelf.svelte.ts';

const at = '2026-11-27T00:00:00.000Z';
const repair = { partName: marmot.motor.name, at: '2026-11-20', words: 'new bearings' };
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
    expect(plainRun(to.records.get('a') as string)).toBe(keptRecord(both[0]));
    expect(to.shelf.car.name).toBe('Wombat');
    expect(to.shelf.content.cars.map(({ name }) => name)).toEqual(['Wombat', 'Vole']);
    expect(to.shelf.content.loose.map(({ part }) => part.name)).toEqual(['Spare']);
    expect(to.repairs.list).toEqual([{ ...repair, partId: to.shelf.car.motor.id }]);
  });
  it('of an older version, with one car and no repairs, is read too', async () => {
    const shelf = {
      version: 1,
      cars: [{ ...marmot, name: 'Old Marmot' }],
      onBench: 'Old Marmot',
      loose: [],
    } as const;
    const to = await page([]);
    const other = { ...repair, partName: 'Other motor' };
    to.repairs.join([other]);
    const file = { shelf: { ...shelf, cars: [...shelf.cars], loose: [] }, runs: both.map(keptRecord) };
    await to.exchange.look(writeBenchFile(file, at), 'older.zip');
    expect(to.exchange.preview?.troubles).toEqual([]);
    expect(to.exchange.cars?.added).toEqual(['Old Marmot']);
    await to.exchange.take();
    expect([to.shelf.car.name, to.logbook.runs.length, to.repairs.list]).toEqual(['Old Marmot', 2, [other]]);
  });
  it('brings nothing twice, also from a second opening', async () => {
    const [to, file] = [await page([both[0]]), await saved()];
    await to.exchange.look(file, 'all.zip');
    expect(to.exchange.preview?.added).toHaveLength(1);
    expect(to.exchange.preview?.same.map(({ id }) => id)).toEqual(['a']);
    await to.exchange.take();
    await to.exchange.look(file, 'all.zip');
    expect(to.exchange.preview).toMatchObject({ added: [], beside: [], notes: [] });
    expect(to.exchange.brings).toBe(false);
  });
  it('puts a run that differs from one of its name beside it, once, and leaves the car that was changed', async () => {
    const to = await page([{ id: 'a', day: 1, value: 9 }]);
    to.shelf.replace({ ...marmot, name: 'Mine' });
    to.repairs.join([{ ...repair, words: 'new brushes' }]);
    const file = await saved();
    for (let time = 0; time < 2; time++) {
      await to.exchange.look(file, 'all.zip');
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
      to.repairs.of(partRefOf(to.shelf.car, 'motor')).map(({ words }) => words),
      'mine stays, the other motor has its own',
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
