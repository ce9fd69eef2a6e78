// SPDX-License-Identifier: MIT
// Identities through a file: kept on the way out and in, two benches that called a part alike are not merged unasked,
// a car that differs is kept, replaced or put beside as a person chose, and only what the browser kept is counted.
import { strFromU8, unzipSync, zipSync, strToU8 } from 'fflate';
import { describe, expect, it } from 'vitest';
import { marmotCar } from '#core/parts/marmot-fixture';
import { partRefOf } from '#core/parts/part';
import { readRecord } from '#core/record/record-reader';
import { carDifferences } from './car-differences.ts';
import { exchangePage as page } from './exchange-fixture.ts';
import { runsOfPart } from './part-runs.ts';

const at = '2026-11-27T00:00:00.000Z';
const mine = { ...marmotCar, name: 'Grey Marmot' };
const run = (id: string, day: number) => ({ id, day, car: marmotCar });
type Bench = Awaited<ReturnType<typeof page>>;
const here = (car: object = mine) => page([{ ...run('here', 1), car: mine }], { first: { car } });
const file = async (from: Bench) => (await from.exchange.save(from.logbook.runs, at)).bytes;
/** As a page saved it before parts had identities. */
async function oldFile(from: Bench): Promise<Uint8Array> {
  const files = unzipSync(await file(from));
  const bare = (name: string) => {
    const text = strFromU8(files[name]).replace(/"(id|partId)":\s*"[0-9a-f-]{36}",?/g, '');
    return strToU8(text.replace(/,\s*}/g, '}'));
  };
  const { files: _sums, ...manifest } = JSON.parse(strFromU8(files['manifest.json'])) as Record<
    string,
    unknown
  >;
  const names = Object.keys(files).filter((name) => /^(runs|shelf|repairs)/.test(name));
  const plain = Object.fromEntries(names.map((name) => [name, bare(name)]));
  return zipSync({ ...plain, 'manifest.json': strToU8(JSON.stringify(manifest)) });
}
/** Ids of the runs of the car's motor. */
function history({ logbook, shelf }: Bench, name: string): string[] {
  const car = shelf.content.cars.find((each) => each.name === name)!;
  return runsOfPart(logbook.runs, partRefOf(car, 'motor'), car).map(({ runId }) => runId);
}

describe('a file of this bench', () => {
  it('carries identities also for runs kept before there were any, and brings them to a fresh profile', async () => {
    const from = await here();
    from.shelf.edit('motor.name', 'Slate Wren');
    const bytes = await file(from);
    const record = readRecord(strFromU8(unzipSync(bytes)['runs/1.json']));
    expect([record.car.motor.id, record.car.id]).toEqual([from.shelf.car.motor.id, from.shelf.car.id]);
    expect(from.records.get('here'), 'what is kept stays as it was').not.toContain(from.shelf.car.motor.id);
    const to = await page([]);
    await to.exchange.look(bytes, 'all.zip');
    expect(to.exchange.asks).toBe(false);
    await to.exchange.take();
    expect([to.shelf.car.motor.id, history(to, 'Grey Marmot')]).toEqual([from.shelf.car.motor.id, ['here']]);
  });
  it('is known by its runs and identities where it comes back to', async () => {
    const from = await here();
    await from.exchange.look(await file(from), 'all.zip');
    expect([from.exchange.brings, from.exchange.asks, from.exchange.preview?.same.length]).toEqual([
      false,
      false,
      1,
    ]);
  });
});
describe('a file of another bench with a part that is called alike', () => {
  const there = () => page([run('there', 2)], { first: { car: marmotCar } });

  it('is told of before anything is added, and joins as another part with a history of its own', async () => {
    const to = await here();
    await to.exchange.look(await file(await there()), 'other.zip');
    expect(to.exchange.alikes.map(({ kind, name }) => `${kind} ${name}`)).toContain('motor Gravel Wren');
    expect(to.exchange.unsaid).toBe(0);
    expect(to.exchange.cars?.renamed).toContainEqual({
      kind: 'motor',
      from: 'Gravel Wren',
      to: 'Gravel Wren 2',
    });
    await to.exchange.take();
    expect(to.shelf.content.cars.map(({ name, motor }) => [name, motor.name])).toEqual([
      ['Grey Marmot', 'Gravel Wren'],
      ['Marmot', 'Gravel Wren 2'],
    ]);
    expect([history(to, 'Grey Marmot'), history(to, 'Marmot')]).toEqual([['here'], ['there']]);
  });
  it('counts with mine where a person says that it is the same part', async () => {
    const to = await here();
    await to.exchange.look(await file(await there()), 'other.zip');
    const motor = to.exchange.alikes.filter(({ kind }) => kind === 'motor');
    to.exchange.say(motor, 'same');
    expect(to.exchange.cars?.shared).toEqual(['Gravel Wren']);
    await to.exchange.take();
    expect(history(to, 'Grey Marmot').toSorted()).toEqual(['here', 'there']);
  });
  it.each([
    ['same', ['here', 'there'], ['Grey Marmot', 'Marmot']],
    ['another', ['here'], ['Grey Marmot', 'Marmot']],
  ] as const)(
    'from before there were identities waits until a person has said: %s',
    async (answer, runs, cars) => {
      const to = await here();
      await to.exchange.look(await oldFile(await there()), 'old.zip');
      expect(to.exchange.trouble).toBeNull();
      expect(to.exchange.unsaid).toBe(4);
      await to.exchange.take();
      expect(
        to.logbook.runs.map(({ id }) => id),
        'nothing yet',
      ).toEqual(['here']);
      to.exchange.say(to.exchange.alikes, answer);
      await to.exchange.take();
      expect(to.logbook.runs).toHaveLength(2);
      expect(history(to, 'Grey Marmot').toSorted()).toEqual(runs);
      expect(to.shelf.content.cars.map(({ name }) => name)).toEqual(cars);
      if (answer === 'another') expect(history(to, 'Marmot')).toEqual(['there']);
    },
  );
  it('is the same where a run of it is here as one of mine', async () => {
    const from = await page([{ ...run('here', 1), car: mine }, run('there', 2)], {
      first: { car: marmotCar },
    });
    const to = await here();
    await to.exchange.look(await oldFile(from), 'old.zip');
    const motor = to.exchange.alikes.find(({ kind }) => kind === 'motor')!;
    expect(to.exchange.answer(motor)).toBe('same');
  });
});
describe('a car of a file that differs from the one here', () => {
  async function asked() {
    const to = await here();
    const bytes = await file(to);
    to.shelf.edit('pack.capacityAh', 4);
    await to.exchange.look(bytes, 'all.zip');
    return { to, car: to.exchange.cars!.differing[0] };
  }
  const capacities = ({ shelf }: Bench) =>
    shelf.content.cars.map(({ name, pack }) => [name, pack.capacityAh]);

  it('shows what differs, and mine stays unless a person chooses otherwise', async () => {
    const { to, car } = await asked();
    expect(carDifferences(car.mine, car.theirs)).toEqual([
      { what: 'Pack, capacity', mine: '4\u00a0Ah', theirs: '5\u00a0Ah' },
    ]);
    expect([to.exchange.choice(car), to.exchange.brings]).toEqual(['mine', false]);
  });
  it('takes its place when that is chosen; mine can be put back', async () => {
    const { to, car } = await asked();
    to.exchange.choose(car, 'theirs');
    await to.exchange.take();
    expect(capacities(to)).toEqual([['Grey Marmot', 5]]);
    expect(to.shelf.content.removed).toMatchObject([{ name: 'Grey Marmot', pack: { capacityAh: 4 } }]);
    expect(history(to, 'Grey Marmot')).toEqual(['here']);
  });
  it('stands beside mine when both are to be kept', async () => {
    const { to, car } = await asked();
    to.exchange.choose(car, 'both');
    await to.exchange.take();
    expect(capacities(to)).toEqual([
      ['Grey Marmot', 4],
      ['Grey Marmot 2', 5],
    ]);
  });
});
describe('runs that the browser refuses to keep', () => {
  it('are not counted as added nor listed, and the person is told what to do', async () => {
    const from = await page([run('a', 1), run('b', 2), run('c', 3)], { first: { car: marmotCar } });
    let full = true;
    const to = await page([], { room: ({ id }) => id === 'a' || !full });
    const bytes = await file(from);
    await to.exchange.look(bytes, 'all.zip');
    await to.exchange.take();
    expect(to.exchange.words).toMatch(
      /^1 run added\. 2 runs could not be kept: .*\(no room\).*Delete runs for good.*open the file again/,
    );
    expect(to.logbook.runs.map(({ id }) => id)).toEqual(['a']);
    full = false;
    await to.exchange.look(bytes, 'all.zip');
    await to.exchange.take();
    expect(to.exchange.words).toBe('2 runs added.');
    expect(to.logbook.runs.map(({ id }) => id).toSorted()).toEqual(['a', 'b', 'c']);
  });
});
