// SPDX-License-Identifier: MIT
// Two shelves put together: nothing here changes, what is new joins, what differs or shares a name is told.
import { describe, expect, it } from 'vitest';
import { marmotCar } from './marmot-fixture.ts';
import { typicalCar, typicalPart } from './part-classes.ts';
import { addCar, discardPart, newShelf, putBack, shelvePart, withFreeNames } from './shelf.ts';
import { identified } from './shelf-identity.ts';
import { arrivingShelf, forFile, mergedShelf } from './shelf-merge.ts';

const here = shelvePart(newShelf(marmotCar), typicalPart('clubMotor', 'Spare'));
const vole = withFreeNames(here, typicalCar('guestTruck', 'Vole'));

describe('a shelf from a file', () => {
  it('that is the same brings nothing, whatever the order of its keys', () => {
    const turned = Object.fromEntries(Object.entries(marmotCar).toReversed()) as typeof marmotCar;
    const merge = mergedShelf(here, { ...here, cars: [turned] });
    expect(merge).toEqual({ shelf: here, added: [], differing: [], left: [], renamed: [], shared: [] });
  });
  it('adds cars and loose parts behind those here, and leaves the bench as it is', () => {
    const file = addCar(shelvePart(newShelf(vole), typicalPart('clubMotor', 'Other spare')), marmotCar);
    const merge = mergedShelf(here, file);
    expect(merge.added).toEqual(['Vole', 'motor Other spare']);
    expect(merge.shelf.cars.map(({ name }) => name)).toEqual(['Marmot', 'Vole']);
    expect(merge.shelf.loose.map(({ part }) => part.name)).toEqual(['Spare', 'Other spare']);
    expect([merge.shelf.onBench, merge.differing, merge.shared]).toEqual(['Marmot', [], []]);
  });
  it('never replaces what has its name, and tells that it differs', () => {
    const other = { ...marmotCar, motor: { ...marmotCar.motor, turns: 21.5 } };
    const merge = mergedShelf(here, newShelf(other));
    expect([merge.shelf, merge.added]).toEqual([here, []]);
    expect(merge.differing).toEqual([{ mine: marmotCar, theirs: other, same: true }]);
  });
  it('tells of a part that is in two places then', () => {
    const twin = { ...vole, motor: { ...vole.motor, name: 'Spare' } };
    expect(mergedShelf(here, newShelf(twin)).shared).toEqual(['Spare']);
  });
  it('replaces the car here where a person says so, which can be put back', () => {
    const other = { ...marmotCar, motor: { ...marmotCar.motor, turns: 21.5 } };
    const { shelf, added } = mergedShelf(here, newShelf(other), () => 'theirs');
    expect([shelf.cars, shelf.onBench, added]).toEqual([[other], 'Marmot', ['Marmot']]);
    expect(putBack(shelf, shelf.removed![0]).cars[1]).toEqual({ ...marmotCar, name: 'Marmot 2' });
  });
  it('keeps both where a person says so: one car described twice, of the same parts', () => {
    const named = identified(here, (what) => `${what} here`);
    const other = { ...named.cars[0], motor: { ...named.cars[0].motor, turns: 21.5 } };
    const { shelf, renamed } = mergedShelf(named, newShelf(other), () => 'both');
    expect(shelf.cars.map(({ name, motor }) => [name, motor.name, motor.turns, motor.id])).toEqual([
      ['Marmot', 'Gravel Wren', 13.5, 'motor here'],
      ['Marmot 2', 'Gravel Wren', 21.5, 'motor here'],
    ]);
    expect([renamed, shelf.cars[1].id]).toEqual([[], undefined]);
  });
  it('from another bench is not merged with what only has its name: car and parts get names of their own', () => {
    const [mine, theirs] = ['here', 'there'].map((at) =>
      identified(newShelf(marmotCar), (what) => `${what} ${at}`),
    );
    const { shelf, renamed, differing } = mergedShelf(mine, theirs);
    expect(differing.map(({ same }) => same)).toEqual([false]);
    expect(shelf.cars.map(({ name, motor }) => [name, motor.name, motor.id])).toEqual([
      ['Marmot', 'Gravel Wren', 'motor here'],
      ['Marmot 2', 'Gravel Wren 2', 'motor there'],
    ]);
    expect(renamed).toContainEqual({ kind: 'motor', from: 'Gravel Wren', to: 'Gravel Wren 2' });
  });
  it('finds a car again that was renamed since', () => {
    const mine = identified(newShelf(marmotCar), (what) => `${what} here`);
    const called = newShelf({ ...mine.cars[0], name: 'Marmot of the crew' });
    const { differing, added } = mergedShelf(mine, called);
    expect([differing.map(({ same }) => same), added]).toEqual([[true], []]);
  });
  it('takes the place of an example that nobody has changed, and of that alone', () => {
    const file = addCar(newShelf(vole), marmotCar);
    const fresh = arrivingShelf(newShelf(marmotCar), file, marmotCar);
    expect([fresh.shelf, fresh.added]).toEqual([file, ['Vole']]);
    expect(arrivingShelf(here, file, marmotCar).shelf.onBench).toBe('Marmot');
  });
  it('goes without what was taken away', () => {
    const left = discardPart(here, 'motor', 'Spare');
    expect(left.removed).toHaveLength(1);
    expect(forFile(left)).toEqual(newShelf(marmotCar));
  });
});
