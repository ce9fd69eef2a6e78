// SPDX-License-Identifier: MIT
// Units against NIST SP 811 (Guide for the Use of the SI, appendix B): printed factors to the digits printed there
// (ozf.in, lbf.in seen in copies; kgf.m, mph, rpm from memory), and against the definitions in whole numbers.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { typedQuantity } from './typed-quantity.ts';
import {
  definitions,
  differenceFromSi,
  differenceToSi,
  fromSi,
  toSi,
  units,
  type UnitName,
} from './units.ts';

const names = Object.keys(units) as UnitName[];
/** Equal to the number of digits that the source prints. */
const printed = (value: number, digits: number, figure: string) =>
  expect(value.toPrecision(digits)).toBe(Number(figure).toPrecision(digits));

describe('factors', () => {
  it.each<[UnitName, number, string]>([
    ['ounceInch', 7, '7.061552e-3'],
    ['kilogramCentimetre', 6, '9.80665e-2'],
    ['milePerHour', 5, '0.44704'],
    ['kilometrePerHour', 7, '0.2777778'],
    ['inch', 3, '0.0254'],
    ['newtonMetre', 1, '1'],
    ['revolutionPerMinute', 7, '1.047198e-1'],
  ])('%s to %d digits of SP 811: %s', (name, digits, figure) => printed(units[name].factor, digits, figure));
  it('pound-force and pound-force inch follow: 4.4482216152605 N exact, 0.1129848 N.m', () => {
    const lbf = definitions.poundKg * definitions.gravityMPerS2;
    expect(lbf).toBeCloseTo(4.4482216152605, 13);
    printed(units.ounceInch.factor * 16, 7, '0.1129848');
    expect(units.ounceInch.factor).toBe((lbf / 16) * 0.0254);
  });
  it('1 kgf.cm = 13.8873866 ozf.in (recomputed from the definitions)', () =>
    printed(fromSi(toSi(1, 'kilogramCentimetre'), 'ounceInch'), 9, '13.8873866'));
  it('a mile is 63 360 inches and 60 mph are 96.560 64 km/h exactly', () => {
    expect(definitions.mileM).toBeCloseTo(63360 * definitions.inchM, 9);
    expect(fromSi(toSi(60, 'milePerHour'), 'kilometrePerHour')).toBeCloseTo(96.56064, 10);
  });
});
describe('temperature', () => {
  // Fixed points: water freezes at 32 F and boils at 212 F; the scales meet at -40; 165 and 180 F, 73.889 and 82.222 C.
  it.each([
    [32, 0],
    [212, 100],
    [-40, -40],
    [98.6, 37],
    [165, 73.8888889],
    [180, 82.2222222],
  ])('%d F is %d C', (fahrenheit, celsius) => {
    expect(toSi(fahrenheit, 'fahrenheit')).toBeCloseTo(celsius, 6);
    expect(fromSi(celsius, 'fahrenheit')).toBeCloseTo(fahrenheit, 6);
  });
  it('a difference of 9 F is one of 5 K', () => {
    expect(differenceToSi(9, 'fahrenheit')).toBeCloseTo(5, 12);
    expect(differenceFromSi(5, 'fahrenheit')).toBeCloseTo(9, 12);
  });
});
it('there and back is the same, for every unit', () =>
  fc.assert(
    fc.property(
      fc.constantFrom(...names),
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      (name, value) =>
        Math.abs(fromSi(toSi(value, name), name) - value) <= 1e-12 * Math.max(100, Math.abs(value)),
    ),
  ));
describe('what a person types', () => {
  it.each([
    ['240 oz.in', 'torque', 1.694772],
    ['240oz-in', 'torque', 1.694772],
    ['240 oz in', 'torque', 1.694772],
    ['17,3 kg·cm', 'torque', 1.69655],
    ['17.3 kgf.cm', 'torque', 1.69655],
    ['1.7 Nm', 'torque', 1.7],
    ['165 °F', 'temperature', 73.8889],
    ['-4 F', 'temperature', -20],
    ['\u22124 F', 'temperature', -20],
    ['30 mph', 'speed', 13.4112],
    ['50 km/h', 'speed', 13.8889],
    ['9 in', 'length', 0.2286],
    ['9"', 'length', 0.2286],
    ['1e2 mm', 'length', 0.1],
    ['12 N·cm', 'torque', 0.12],
    ['5 mNm', 'torque', 0.005],
    ['30000 rpm', 'rotational speed', 3141.5927],
    ['100 rad/s', 'rotational speed', 100],
  ] as const)('%s is a %s of %d in SI', (text, dimension, si) => {
    const typed = typedQuantity(text, dimension);
    expect(typed).toMatchObject({ ok: true });
    expect(typed.ok && typed.si).toBeCloseTo(si, 4);
  });
  it.each([
    ['', 'torque', /does not begin with a number/],
    ['strong', 'torque', /does not begin with a number/],
    ['240', 'torque', /240 has no unit.*oz·in, kgf·cm/],
    ['240 stone', 'torque', /"stone" is no unit/],
    ['240 C', 'torque', /°C is a unit of temperature, not of torque/],
    ['1.2.3 kg.cm', 'torque', /no unit this bench knows/],
    ['NaN F', 'temperature', /does not begin with a number/],
    ['1e999 mm', 'length', /too large/],
  ] as const)('%j as a %s is told', (text, dimension, words) => {
    const typed = typedQuantity(text, dimension);
    expect(typed.ok).toBe(false);
    expect(!typed.ok && typed.words).toMatch(words);
  });
});
