// SPDX-License-Identifier: MIT
// Where cars and parts are kept: they move over from the place of before and none is lost, every change is written at
// once, a database that refuses or is full is told with what to do.
import { describe, expect, it } from 'vitest';
import { marmotCar } from '#core/parts/marmot-fixture';
import { withoutIdentity } from '#core/parts/identity';
import { addCar, addLike, newShelf } from '#core/parts/shelf';
import type { BenchStore } from '../adapters/bench-store.ts';
import { openMemory } from './kept-memory.svelte.ts';
import { Repairs } from './repairs.svelte.ts';
import { newcomer } from './shelf-newcomer.ts';
import { Shelf } from './shelf.svelte.ts';

const own = { ...marmotCar, name: 'Grey Marmot' };
const repair = { partName: own.motor.name, at: '2026-11-20', words: 'new bearings' };
function small(first: Readonly<Record<string, unknown>> = {}) {
  const kept = new Map(Object.entries(first).map(([name, value]) => [name, JSON.stringify(value)]));
  return {
    kept,
    getItem: (name: string) => kept.get(name) ?? null,
    setItem: (name: string, text: string) => void kept.set(name, text),
  };
}
/** A database; `full`: it takes nothing in. */
function database(full = { now: false }) {
  const kept = new Map<string, string>();
  const store: BenchStore = {
    all: () => Promise.resolve(new Map(kept)),
    put: (name, text) =>
      full.now
        ? Promise.reject(new DOMException('no room', 'QuotaExceededError'))
        : Promise.resolve(void kept.set(name, text)),
  };
  return { kept, store };
}
const refusing: BenchStore = {
  all: () => Promise.reject(new DOMException('not here', 'SecurityError')),
  put: () => Promise.reject(new DOMException('not here', 'SecurityError')),
};
const written = async () => {
  for (let turn = 0; turn < 4; turn++) await Promise.resolve();
};
const names = (shelf: Shelf) => shelf.content.cars.map(({ name }) => name);

describe('a shelf that the small memory held', () => {
  it.each([
    ['of several cars', { shelf: addLike(newShelf(own), own.name, 'Vole') }],
    ['of the one car of before', { car: own }],
  ])('%s moves into the database with its repairs, and stays where it was too', async (_what, before) => {
    const [{ kept, store }, old] = [database(), small({ ...before, repairs: [repair] })];
    const untouched = new Map(old.kept);
    const memory = await openMemory(store, old);
    const shelf = new Shelf(memory);
    new Repairs(memory, () => shelf.known);
    await written();
    expect(old.kept).toEqual(untouched);
    old.kept.clear();
    const later = new Shelf(await openMemory(store, old));
    expect(later.content).toEqual(shelf.content);
    expect(withoutIdentity(later.car)).toEqual(own);
    const [mended] = new Repairs(await openMemory(store, old)).list;
    expect(mended).toEqual({ ...repair, partId: later.car.motor.id });
    expect(kept.size).toBeGreaterThan(2);
    expect(memory.trouble).toBeNull();
  });
  it('is read there no more, but cars that joined there since are not lost', async () => {
    const [{ store }, old] = [database(), small({ shelf: newShelf(own) })];
    new Shelf(await openMemory(store, old)).edit('pack.capacityAh', 4);
    await written();
    const elsewhere = addCar(newShelf(own), { ...marmotCar, name: 'Hare' });
    old.setItem('shelf', JSON.stringify(elsewhere));
    const shelf = new Shelf(await openMemory(store, old));
    expect([names(shelf), shelf.car.pack.capacityAh]).toEqual([['Grey Marmot', 'Hare'], 4]);
    expect(shelf.trouble).toMatch(/Hare joined the shelf\. Of Grey Marmot the one here stays/);
    await written();
    const later = new Shelf(await openMemory(store, old));
    expect([names(later), later.trouble]).toEqual([['Grey Marmot', 'Hare'], null]);
  });
});
describe('a change', () => {
  it('is in the database before anything else happens', async () => {
    const { kept, store } = database();
    const shelf = new Shelf(await openMemory(store, small()));
    shelf.act((all) => newcomer(all, 'guestTruck', 'Vole'));
    await written();
    expect(kept.get('shelf')).toContain('"Vole"');
    expect(names(new Shelf(await openMemory(store, small())))).toContain('Vole');
  });
  it('that finds no room stands on the page, is told, and is kept once there is room', async () => {
    const full = { now: false };
    const { kept, store } = database(full);
    const memory = await openMemory(store, small({ shelf: newShelf(own) }));
    const shelf = new Shelf(memory);
    await written();
    full.now = true;
    shelf.edit('pack.capacityAh', 4);
    await written();
    expect(shelf.car.pack.capacityAh).toBe(4);
    expect([memory.trouble, memory.waiting]).toEqual([
      expect.stringMatching(/QuotaExceededError.*Delete runs for good.*save the logbook as a file/),
      true,
    ]);
    full.now = false;
    await memory.retry();
    expect([memory.trouble, memory.waiting]).toEqual([null, false]);
    expect(JSON.parse(kept.get('shelf')!)).toMatchObject({ cars: [{ pack: { capacityAh: 4 } }] });
  });
});
describe('a database that the browser refuses', () => {
  it('leaves the small memory as the place, says so and what to do', async () => {
    const old = small({ shelf: newShelf(own) });
    const memory = await openMemory(refusing, old);
    new Shelf(memory).act((all) => newcomer(all, 'guestTruck', 'Vole'));
    expect(memory.trouble).toMatch(/SecurityError.*Allow this site to keep data.*load the page again/);
    expect(memory.waiting).toBe(false);
    expect(names(new Shelf(await openMemory(refusing, old)))).toEqual(['Grey Marmot', 'Vole']);
    const again = new Shelf(await openMemory(database().store, old));
    expect(names(again), 'and all of it moves once it is there').toEqual(['Grey Marmot', 'Vole']);
  });
  it('and a small memory that refuses too leaves the page working, and says so', async () => {
    const deaf = {
      getItem: () => null,
      setItem: () => {
        throw new DOMException('not here either', 'SecurityError');
      },
    };
    const memory = await openMemory(refusing, deaf);
    const shelf = new Shelf(memory);
    expect(shelf.act((all) => newcomer(all, 'guestTruck', 'Vole'))).toBe(true);
    expect(memory.trouble).toMatch(/stands on this page only.*save the logbook as a file/);
  });
});
