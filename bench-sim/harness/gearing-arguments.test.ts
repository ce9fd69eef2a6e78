// SPDX-License-Identifier: MIT
// What a person types at `npm run gearing` wrongly is told with words; figures not given come from label or memory.
import { describe, expect, it } from 'vitest';
import { readCar } from './car-file.ts';
import { driveOf, figuresOf, gearingArguments, pinionsOf, targetOf } from './gearing-arguments.ts';

const car = readCar('demo-data/marmot.json');
const drive = driveOf(car);

describe('gearing refuses', () => {
  it('a car without a drive train, and says what to add', () =>
    expect(() => driveOf({ ...car, drive: undefined })).toThrow(/add "drive" with pinionTeeth/));
  it('an unknown flag', () => expect(() => gearingArguments(['--gear', '3'])).toThrow(/--gear/));
  it.each(['3', '20-', '28-20', 'many', '100'])('pinions "%s"', (given) =>
    expect(() => pinionsOf(given, drive)).toThrow(/5 to 99/),
  );
  it.each(['0', '-5', 'fast'])('a kV of "%s"', (kv) =>
    expect(() => figuresOf(car, drive, { kv })).toThrow(/--kv takes a number above 0/),
  );
  it('kV given twice', () =>
    expect(() => figuresOf(car, drive, { kv: '3000', measured: 'x.json' })).toThrow(/One of --kv/));
  it('a record that is not there', () =>
    expect(() => figuresOf(car, drive, { measured: 'no-such-record.json' })).toThrow(/can't be read/));
  it('two targets, a speed without a unit, a roll-out in a unit of something else', () => {
    expect(() => targetOf({ ratio: '8', speed: '40 km/h' }, drive, 20000)).toThrow(/at a time/);
    expect(() => targetOf({ speed: '40' }, drive, 20000)).toThrow(/no unit/);
    expect(() => targetOf({ rollout: '40 km/h' }, drive, 20000)).toThrow(/not of length/);
  });
});
describe('gearing takes', () => {
  it('nine pinions about the fitted one where none are named', () =>
    expect(pinionsOf(undefined, drive)).toEqual([20, 21, 22, 23, 24, 25, 26, 27, 28]));
  it('the label of the motor where nothing was measured', () =>
    expect(figuresOf(car, drive, {}).kvRpmPerV).toMatchObject({ value: 2900, origin: 'label of the motor' }));
  it('a roll-out as a ratio', () =>
    expect(targetOf({ rollout: '28.65 mm' }, drive, 20000)).toBeCloseTo(9.1, 2));
});
