// SPDX-License-Identifier: MIT
// Shown units against NIST SP 811 (Guide for the Use of the SI, appendix B.8, factors from memory to the digits printed
// there, ozf.in seen in copies): F = 1.8 C + 32; 1 ozf.in = 7.061552 mN.m; 1 kgf.m = 9.80665 N.m; 1 rpm = 0.1047198
// rad/s.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { choices, sameUnit, servoSpeed, shownUnit, usualWish, type UnitWish } from './shown-unit.ts';

const wish = (change: Partial<UnitWish>): UnitWish => ({ ...usualWish, ...change });
const shown = (own: string, x: number, change: Partial<UnitWish> = {}) => {
  const { unit, value } = shownUnit(own, x, wish(change));
  return [Number(value(x).toPrecision(7)), unit];
};
describe('a value', () => {
  it.each<[string, number, Partial<UnitWish>, number, string]>([
    ['C', 100, { temperature: 'fahrenheit' }, 212, '°F'],
    ['C', -40, { temperature: 'fahrenheit' }, -40, '°F'],
    ['C', 21.5, {}, 21.5, '°C'],
    ['K', 5, { temperature: 'fahrenheit' }, 9, '°F'],
    ['mN·m', 7.061552, { torque: 'ounceInch' }, 1, 'oz·in'],
    ['N.m', 9.80665, { torque: 'kilogramCentimetre' }, 100, 'kgf·cm'],
    ['N.m', 1.18, {}, 118, 'N·cm'],
    ['mN·m', 5.1, {}, 5.1, 'mN·m'],
    ['mN·m', 15, {}, 1.5, 'N·cm'],
    ['rpm', 30000, { rotation: 'radianPerSecond' }, 3141.593, 'rad/s'],
    ['rpm/V', 1, { rotation: 'radianPerSecond' }, 0.1047198, 'rad/(V·s)'],
    ['rpm', 21640, {}, 21640, 'rpm'],
    ['ohm', 0.0352, {}, 35.2, 'mΩ'],
    ['F', 0.00231, {}, 2310, 'µF'],
    ['s', 0.107, {}, 107, 'ms'],
    [servoSpeed, 0.107, {}, 0.107, 's/60°'],
    ['us', 1520, {}, 1520, 'µs'],
    ['V', 7.4, { temperature: 'fahrenheit', torque: 'ounceInch', rotation: 'radianPerSecond' }, 7.4, 'V'],
  ])('of %s, %d with %j, is shown as %d %s', (own, x, change, value, unit) =>
    expect(shown(own, x, change)).toEqual([value, unit]),
  );
});
it('a difference knows no offset', () => {
  const { value, difference } = shownUnit('C', 20, wish({ temperature: 'fahrenheit' }));
  expect(difference(5)).toBeCloseTo(9, 12);
  expect(value(25) - value(20)).toBeCloseTo(difference(5), 12);
});
const anyWish = fc.record({
  temperature: fc.constantFrom(...choices.temperature),
  torque: fc.constantFrom(...choices.torque),
  rotation: fc.constantFrom(...choices.rotation),
});
it('order and distances stay: value(x + d) = value(x) + difference(d), rising, whatever is chosen', () =>
  fc.assert(
    fc.property(
      anyWish,
      fc.constantFrom('C', 'K', 'rpm', 'rpm/V', 'N.m', 'mN·m', 'ohm', 's', 'V'),
      fc.double({ min: -1e4, max: 1e4, noNaN: true }),
      fc.double({ min: 1e-3, max: 1e4, noNaN: true }),
      (chosen, own, x, d) => {
        const { value, difference } = shownUnit(own, x, chosen);
        const gap = value(x + d) - value(x) - difference(d);
        return difference(d) > 0 && Math.abs(gap) <= 1e-9 * (Math.abs(value(x)) + difference(d) + 1);
      },
    ),
  ));
it('seconds for 60 degrees are seconds: what was kept in the one holds for the other', () => {
  expect(sameUnit('s', servoSpeed)).toBe(true);
  expect(sameUnit('s', 'V')).toBe(false);
});
