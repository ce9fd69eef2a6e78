// SPDX-License-Identifier: MIT
// Cars and parts on the shelf: what is refused and with which words, and that a part takes its baselines along.
import { describe, expect, it } from 'vitest';
import type { Car } from './part.ts';
import * as shelves from './shelf.ts';
import { marmotCar } from './marmot-fixture.ts';

const one = shelves.newShelf(marmotCar);
const two = shelves.addLike(one, 'Marmot', 'Marmot for guests');
const baseline = (partName: string) =>
  ({ checkResultId: 'motor-no-load/kv', partName, unit: 'rpm/V' }) as NonNullable<Car['baselines']>[number];
const named = (shelf: shelves.ShelfContent, name: string) => shelf.cars.find((car) => car.name === name)!;

describe('the shelf refuses', () => {
  it('two cars of one name, by adding and by renaming', () => {
    expect(() => shelves.addCar(one, marmotCar)).toThrow(/already/);
    expect(() => shelves.changeCar(two, 'Marmot for guests', marmotCar)).toThrow(/another name/);
  });
  it('to give away the last car, an unknown car, a part it has not', () => {
    expect(() => shelves.removeCar(one, 'Marmot')).toThrow(/last car/);
    expect(() => shelves.putOnBench(one, 'Vole')).toThrow(/no car "Vole"/);
    expect(() => shelves.fitPart(one, 'Marmot', 'motor', 'Spare')).toThrow(/no loose motor "Spare"/);
    expect(() => shelves.swapParts(two, 'radio', 'Marmot', 'Marmot for guests')).toThrow(/no such part/);
  });
  it('two parts of a kind with one name, as nobody could tell them apart', () =>
    expect(() => shelves.shelvePart(one, marmotCar.motor)).toThrow(/nobody could tell them apart/));
  it('a file whose bench car is none of its cars', () =>
    expect(shelves.shelfSchema.safeParse({ ...one, onBench: 'Vole' }).error?.issues[0].message).toMatch(
      /not on the shelf/,
    ));
});
describe('the shelf', () => {
  it('makes a second car with names of its own and no history', () => {
    const guest = named(two, 'Marmot for guests');
    expect(guest.motor.name).toBe(`${marmotCar.motor.name} 2`);
    expect({ ...guest.motor, name: '' }).toEqual({ ...marmotCar.motor, name: '' });
    expect(guest.baselines).toBeUndefined();
    expect(named(shelves.addLike(two, 'Marmot for guests', 'Third'), 'Third').motor.name).toBe(
      `${marmotCar.motor.name} 3`,
    );
  });
  it('moves a part with its baselines and leaves the others', () => {
    const mine = [baseline(marmotCar.motor.name), baseline(marmotCar.pack.name)];
    const kept = shelves.changeCar(two, 'Marmot', { ...marmotCar, baselines: mine });
    const moved = shelves.swapParts(kept, 'motor', 'Marmot', 'Marmot for guests');
    expect(named(moved, 'Marmot for guests').motor.name).toBe(marmotCar.motor.name);
    expect(named(moved, 'Marmot for guests').baselines).toEqual([mine[0]]);
    expect(named(moved, 'Marmot').baselines).toEqual([mine[1]]);
    expect(named(moved, 'Marmot').motor.name).toBe(`${marmotCar.motor.name} 2`);
  });
  it('fits a spare and keeps the one that came out', () => {
    const spare = { ...marmotCar.servo, name: 'Spare servo' };
    const fitted = shelves.fitPart(shelves.shelvePart(one, spare), 'Marmot', 'servo', 'Spare servo');
    expect(shelves.carOnBench(fitted).servo.name).toBe('Spare servo');
    expect(fitted.loose.map(({ part }) => part.name)).toEqual([marmotCar.servo.name]);
    expect(shelves.discardPart(fitted, 'servo', marmotCar.servo.name).loose).toEqual([]);
  });
  it('keeps a car on the bench when that one is renamed or taken away', () => {
    expect(shelves.changeCar(two, 'Marmot', { ...marmotCar, name: 'Marmot A' }).onBench).toBe('Marmot A');
    expect(shelves.removeCar(two, 'Marmot').onBench).toBe('Marmot for guests');
  });
  it('puts back what was taken away, beside a car that has its name by now', () => {
    const left = shelves.removeCar(two, 'Marmot');
    const again = shelves.addCar(left, { ...marmotCar, name: 'Marmot' });
    const back = shelves.putBack(again, again.removed![0]);
    expect(back.cars.map(({ name }) => name)).toEqual(['Marmot for guests', 'Marmot', 'Marmot 2']);
    expect(back.removed).toEqual([]);
  });
  it('lays a part that a car can do without on the shelf, and takes it back from those taken away', () => {
    const drive = { kind: 'drive', name: 'Long gears', pinionTeeth: 20, spurTeeth: 84 } as const;
    const geared = { ...marmotCar, drive: { ...drive, internalRatio: 2.6, tyreDiameterM: 0.083 } };
    const out = shelves.takeOut(shelves.newShelf(geared), 'Marmot', 'drive');
    expect(shelves.carOnBench(out).drive).toBeUndefined();
    const gone = shelves.discardPart(out, 'drive', 'Long gears');
    expect(gone.loose).toEqual([]);
    expect(shelves.putBack(gone, gone.removed![0]).loose[0].part.name).toBe('Long gears');
    expect(() => shelves.takeOut(one, 'Marmot', 'motor')).toThrow(/No car goes without a motor/);
  });
  it('is read back as it was', () =>
    expect(shelves.shelfSchema.parse(JSON.parse(JSON.stringify(two)))).toEqual(
      JSON.parse(JSON.stringify(two)),
    ));
});
