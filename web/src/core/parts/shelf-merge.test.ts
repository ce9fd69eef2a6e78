// SPDX-License-Identifier: MIT
// Two shelves put together: nothing here changes, what is new joins, what differs or shares a name is told.
import { describe, expect, it } from 'vitest';
import { marmotCar } from './marmot-fixture.ts';
import { typicalCar, typicalPart } from './part-classes.ts';
import { addCar, discardPart, newShelf, shelvePart, withFreeNames } from './shelf.ts';
import { arrivingShelf, forFile, mergedShelf } from './shelf-merge.ts';

const here = shelvePart(newShelf(marmotCar), typicalPart('clubMotor', 'Spare'));
const vole = withFreeNames(here, typicalCar('guestTruck', 'Vole'));

describe('a shelf from a file', () => {
  it('that is the same brings nothing, whatever the order of its keys', () => {
    const turned = Object.fromEntries(Object.entries(marmotCar).toReversed()) as typeof marmotCar;
    const merge = mergedShelf(here, { ...here, cars: [turned] });
    expect(merge).toEqual({ shelf: here, added: [], differing: [], shared: [] });
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
    expect([merge.shelf, merge.added, merge.differing]).toEqual([here, [], ['Marmot']]);
  });
  it('tells of parts that would share a history with one here', () => {
    const twin = { ...vole, motor: { ...vole.motor, name: 'Spare' } };
    expect(mergedShelf(here, newShelf(twin)).shared).toEqual(['motor Spare']);
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
