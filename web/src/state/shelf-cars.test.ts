// SPDX-License-Identifier: MIT
// Several cars: who had one car keeps it, another car comes and goes, a part takes its history into another car,
// set-up values get their days, the virtual rig's car joins the others.
import { describe, expect, it } from 'vitest';
import { withoutIdentity } from '#core/parts/identity';
import { partRefOf } from '#core/parts/part';
import { isTypical } from '#core/parts/part-classes';
import { discardPart, putBack, putOnBench, removeCar, swapParts } from '#core/parts/shelf';
import { marmotCar } from '#core/parts/marmot-fixture';
import { keptSummary } from './kept-run-fixture.ts';
import { runsOfChecks, runsOfPart } from './part-runs.ts';
import { newcomer } from './shelf-newcomer.ts';
import { movesOf } from './shelf-moves.ts';
import { marmot, Shelf } from './shelf.svelte.ts';

function memory(first: Readonly<Record<string, unknown>> = {}) {
  const kept = new Map(Object.entries(first).map(([key, value]) => [key, JSON.stringify(value)]));
  return {
    kept,
    getItem: (at: string) => kept.get(at) ?? null,
    setItem: (at: string, value: string) => void kept.set(at, value),
  };
}
const own = { ...marmotCar, name: 'Grey Marmot' };
const at = Date.parse('2026-11-27T20:15:00Z');
const names = (shelf: Shelf) => shelf.content.cars.map(({ name }) => name);

describe('who used the page while it knew one car', () => {
  it('has that car, its own limits and what was typed, and loses none of it by adding another', () => {
    const limit = {
      checkResultId: 'motor-no-load/no-load-current',
      max: 3.3,
      reason: 'as found on my track',
      date: '2026-11-27',
    };
    const car = { ...own, overrides: [limit] };
    const place = memory({ car, 'quantities as typed': { 'servo.ratedTorqueNm': '12 kg.cm' } });
    const shelf = new Shelf(place);
    expect(withoutIdentity(shelf.car)).toEqual(car);
    expect(shelf.typed('servo.ratedTorqueNm')).toBe('12 kg.cm');
    shelf.act((all) => newcomer(all, 'guestTruck', 'Vole'));
    const later = new Shelf(place);
    expect(names(later)).toEqual(['Grey Marmot', 'Vole']);
    expect(later.car, 'identities are kept too').toEqual(shelf.car);
    expect(JSON.parse(place.kept.get('car')!), 'left as it was').toEqual(car);
  });
  it('is told where that car can’t be read, which stays as it was', () => {
    const place = memory({ car: { ...own, pack: undefined } });
    expect(new Shelf(place).trouble).toMatch(/The car that this browser kept can't be read \(pack: /);
    expect(place.kept.get('car')).toBe(JSON.stringify({ ...own, pack: undefined }));
  });
  it('has a damaged shelf set aside, and is told', () => {
    const place = memory({ car: own, shelf: { version: 1, cars: [] } });
    const shelf = new Shelf(place);
    expect(shelf.car.name).toBe('Grey Marmot');
    expect(shelf.trouble).toMatch(/cars: a shelf holds at least one car\).*set aside/);
    expect(place.kept.get('shelf that could not be read')).toBe('{"version":1,"cars":[]}');
  });
});
describe('several cars', () => {
  it('one is on the bench, also after a reload; what is refused is said and changes nothing', () => {
    const place = memory({ car: own });
    const shelf = new Shelf(place);
    expect(shelf.act((all) => newcomer(all, 'like', ''))).toBe(true);
    expect(shelf.car.name, 'the bench stays').toBe('Grey Marmot');
    shelf.act((all) => putOnBench(all, 'Quarry Vole'));
    expect(new Shelf(place).car.motor.name).toBe(`${own.motor.name} 2`);
    expect(shelf.act((all) => newcomer(all, 'buggy', 'Grey Marmot'))).toBe(false);
    expect(shelf.trouble).toMatch(/There is a car "Grey Marmot" already/);
    expect(shelf.act((all) => newcomer(all, 'buggy', 'x'.repeat(61)))).toBe(false);
    expect(names(shelf)).toEqual(['Grey Marmot', 'Quarry Vole']);
  });
  it('one is taken away and put back as it was', () => {
    const shelf = new Shelf(memory({ car: own }));
    shelf.act((all) => newcomer(all, 'buggy', 'Hare'));
    shelf.act((all) => removeCar(all, 'Grey Marmot'));
    expect([names(shelf), shelf.car.name]).toEqual([['Hare'], 'Hare']);
    shelf.act((all) => putBack(all, all.removed![0]));
    expect(withoutIdentity(shelf.content.cars[1])).toEqual(own);
  });
  it('a part can’t be renamed to what another of its kind is called', () => {
    const shelf = new Shelf(memory({ car: own }));
    shelf.act((all) => newcomer(all, 'clubMotor', 'Spare'));
    shelf.edit('motor.name', 'Spare');
    expect(shelf.error('motor.name')).toMatch(/another motor "Spare".*nobody could tell them apart/);
    expect(shelf.car.motor.name).toBe(own.motor.name);
  });
  it('figures of a class are typical until the person’s own is typed or confirmed', () => {
    const shelf = new Shelf(memory({ car: own }));
    shelf.act((all) => newcomer(all, 'clubTruck', 'Vole'));
    shelf.act((all) => putOnBench(all, 'Vole'));
    expect(isTypical(shelf.car, 'controller.throttle.lowUs')).toBe(true);
    shelf.edit('motor.turns', 17.5);
    shelf.confirm('motor.polePairs');
    expect(
      ['turns', 'polePairs', 'ratedKvRpmPerV'].map((each) => isTypical(shelf.car, `motor.${each}`)),
    ).toEqual([false, false, true]);
    expect(isTypical(shelf.car, 'motor.name')).toBe(false);
  });
});
describe('a part that moves', () => {
  const check = { id: 'motor-no-load', part: 'motor' } as const;
  const run = { ...keptSummary({ id: 'a', day: 1, car: own }), rig: 'board', rigSerial: '0042' };

  it('takes its history into the other car, and leaves none behind', () => {
    const shelf = new Shelf(memory({ car: own }));
    shelf.act((all) => newcomer(all, 'guestTruck', 'Vole'));
    const seen = () => runsOfChecks([run], [check], shelf.car).map(({ id }) => id);
    expect(seen()).toEqual(['a']);
    shelf.act((all) => swapParts(all, 'motor', 'Grey Marmot', 'Vole'));
    expect(seen(), 'another motor is here now').toEqual([]);
    shelf.act((all) => putOnBench(all, 'Vole'));
    expect(seen()).toEqual(['a']);
    expect(runsOfPart([run], partRefOf(shelf.car, 'motor'), shelf.car).map(({ runId }) => runId)).toEqual([
      'a',
    ]);
  });
  it('is offered for what the shelf holds: a spare to fit, a car to swap with', () => {
    const shelf = new Shelf(memory({ car: own }));
    expect(movesOf(shelf.content, 'motor')).toEqual([]);
    shelf.act((all) => newcomer(all, 'clubMotor', 'Spare'));
    shelf.act((all) => newcomer(all, 'guestTruck', 'Vole'));
    const moves = movesOf(shelf.content, 'motor');
    expect(moves.map(({ words }) => words)).toEqual([
      `Fit Spare, lay ${own.motor.name} on the shelf`,
      `Swap ${own.motor.name} for Motor of Vole`,
    ]);
    shelf.act(moves[0].act);
    expect([shelf.car.motor.name, shelf.content.loose[0].part.name]).toEqual(['Spare', own.motor.name]);
    shelf.act((all) => discardPart(all, 'motor', own.motor.name));
    expect(shelf.content.removed).toHaveLength(1);
  });
});
describe('set-up values', () => {
  it('are kept with the day of each change, and the run that proposed it', () => {
    const shelf = new Shelf(memory({ car: own }), () => at);
    shelf.edit('controller.railSettingV', 7.4);
    shelf.edit('motor.turns', 17.5);
    const endPoints = { shortUs: 1120, longUs: 1880 };
    shelf.replace({ ...shelf.car, servo: { ...shelf.car.servo, endPoints } }, 'run-7');
    const stamp = '2026-11-27T20:15:00.000Z';
    expect(shelf.car.setUp).toEqual([
      { what: 'rail-setting', figures: { railSettingV: 7.4 }, at: stamp },
      { what: 'end-points', figures: endPoints, at: stamp, runId: 'run-7' },
    ]);
  });
  it('come with a part that is fitted, and are empty once taken out', () => {
    const shelf = new Shelf(memory({ car: own }), () => at);
    shelf.edit('motor.timingDegrees', 30);
    shelf.act((all) => newcomer(all, 'clubMotor', 'Spare'));
    shelf.act(movesOf(shelf.content, 'motor')[0].act);
    expect(shelf.car.setUp?.map(({ what, figures }) => [what, figures])).toEqual([
      ['timing', { timingDegrees: 30 }],
      ['timing', {}],
    ]);
  });
});
describe('the car that the virtual rig draws', () => {
  const drawn = (seed: number) => ({ ...marmotCar, name: `Marmot no. ${seed}` });

  it('takes the example’s place on a first visit', () => {
    const shelf = new Shelf(memory());
    shelf.adopt(drawn(7));
    expect(names(shelf)).toEqual(['Marmot no. 7']);
    shelf.adopt(drawn(8));
    expect(names(shelf), 'the one before was untouched').toEqual(['Marmot no. 8']);
  });
  it('joins a person’s own, and leaves what was changed on it', () => {
    const place = memory({ car: own });
    new Shelf(place).adopt(drawn(7));
    const shelf = new Shelf(place);
    expect([names(shelf), shelf.car.name]).toEqual([['Grey Marmot', 'Marmot no. 7'], 'Marmot no. 7']);
    shelf.edit('pack.capacityAh', 4);
    shelf.adopt(drawn(7));
    expect(shelf.car.pack.capacityAh).toBe(4);
    shelf.adopt(drawn(8));
    expect(names(shelf)).toEqual(['Grey Marmot', 'Marmot no. 7', 'Marmot no. 8']);
  });
  it('is the example no longer once somebody has changed that', () => {
    const shelf = new Shelf(memory());
    shelf.edit('pack.capacityAh', 4);
    shelf.adopt(drawn(7));
    expect(names(shelf)).toEqual([marmot.name, 'Marmot no. 7']);
  });
});
