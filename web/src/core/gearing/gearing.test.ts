// SPDX-License-Identifier: MIT
// Gearing forward and backward on the made-up truck Marmot; the worked example from outside stands in
// tests/outside/gear-train.ts.
import { describe, expect, it } from 'vitest';
import { exact, standardU, uncertain } from '../measurements/quantity.ts';
import { rectangular, typeB } from '../measurements/tap-errors.ts';
import { typedQuantity } from '../units/typed-quantity.ts';
import { choicesFor, pinionsFrom, ratioForRollOut, ratioForSpeed } from './gear-choice.ts';
import { gearSheet } from './gearing-sheet.ts';
import { carSpeed, finalDriveRatio, motorSpeed, rollOutM, type Pull } from './gearing.ts';

const drive = {
  kind: 'drive',
  name: 'Marmot drive train',
  pinionTeeth: 24,
  spurTeeth: 84,
  internalRatio: 2.6,
  tyreDiameterM: 0.083,
} as const;
const pull: Pull = {
  kvRpmPerV: exact(3000),
  packV: exact(8),
  seriesOhm: exact(0.03),
  currentA: exact(20),
};

describe('backward', () => {
  it('refuses a target that no gear can meet, and an empty box', () => {
    expect(() => choicesFor(0, drive, { pinions: [20], spurs: [80] })).toThrow(/more than 0/);
    expect(() => choicesFor(Number.NaN, drive, { pinions: [20], spurs: [80] })).toThrow(/more than 0/);
    expect(() => choicesFor(8, drive, { pinions: [], spurs: [80] })).toThrow(/at least one pinion/);
  });
  it('puts the nearest first and says how far it misses', () => {
    const [best, next] = choicesFor(8.9, drive, { pinions: pinionsFrom(20, 28), spurs: [84] });
    expect([best.pinionTeeth, next.pinionTeeth]).toEqual([25, 24]);
    expect(best.miss).toBeCloseTo(((84 / 25) * 2.6) / 8.9 - 1, 12);
  });
  it('is the inverse of forward', () => {
    expect(ratioForRollOut(rollOutM(drive), drive)).toBeCloseTo(finalDriveRatio(drive), 12);
    const rpm = motorSpeed(pull).value;
    const speed = carSpeed(drive, exact(drive.tyreDiameterM), pull).value;
    expect(ratioForSpeed(speed, rpm, drive)).toBeCloseTo(finalDriveRatio(drive), 12);
  });
});
describe('forward', () => {
  it('multiplies the stages', () => expect(finalDriveRatio(drive)).toBeCloseTo(3.5 * 2.6, 12));
  it('rolls out pi d over the ratio', () => expect(rollOutM(drive)).toBeCloseTo(0.0286542, 6));
  it('gives the speed at the sagged pack: 8 V less 20 A through 30 mohm', () => {
    expect(motorSpeed(pull).value).toBeCloseTo(3000 * 7.4, 6);
    const speed = carSpeed(drive, exact(drive.tyreDiameterM), pull).value;
    expect(speed).toBeCloseTo((22200 / 60) * rollOutM(drive), 9);
    expect(speed).toBeCloseTo(10.602, 3);
  });
  it('carries the uncertainty of kV and tyre', () => {
    const line = (id: string, half: number) => [typeB(id, id, 'test'), rectangular(half)] as const;
    const tyre = uncertain(0.083, [line('tyre', 0.00083)]);
    const uncertainKv = { ...pull, kvRpmPerV: uncertain(3000, [line('kv', 30)]) };
    const speed = carSpeed(drive, tyre, uncertainKv);
    expect(standardU(speed) / speed.value).toBeCloseTo(Math.hypot(0.01, 0.01) / Math.sqrt(3), 5);
  });
  it('reads as typed: 10.6 m/s is 23.7 mph', () =>
    expect(typedQuantity('23.7 mph', 'speed')).toMatchObject({ si: expect.closeTo(10.595, 2) as number }));
});
describe('a sheet over pinions', () => {
  const figure = (value: number, halfWidth = 0) => ({ value, halfWidth, origin: 'test' });
  const rows = gearSheet(drive, [20, 24], {
    kvRpmPerV: figure(3000, 30),
    packV: figure(8, 0.02),
    seriesOhm: figure(0.03, 0.002),
    currentA: figure(20, 2),
    tyreM: figure(0.083),
  });
  it('gives one row a pinion, faster with more teeth and the same motor', () => {
    expect(rows.map(({ pinionTeeth }) => pinionTeeth)).toEqual([20, 24]);
    expect(rows[1].carMPerS.value / rows[0].carMPerS.value).toBeCloseTo(24 / 20, 9);
    expect(rows[0].motorRpm.value).toBeCloseTo(22200, 6);
  });
  it('carries the half-widths: 1 % of kV, 72 mV of 7.4 V', () => {
    const volts = Math.hypot(0.02, 20 * 0.002, 2 * 0.03) / 7.4;
    expect(rows[0].motorRpm.halfWidth / rows[0].motorRpm.value).toBeCloseTo(Math.hypot(0.01, volts), 3);
  });
});
