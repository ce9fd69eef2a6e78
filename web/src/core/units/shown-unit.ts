// SPDX-License-Identifier: MIT
// How a figure in a result's own unit is shown: in the unit that a person chose for its kind, in the one that the trade
// uses, in a thousandth where that reads better. The one place for it; records and tables keep their own units.
import { unitSymbol } from './unit-symbol.ts';
import { fromSi, toSi, units, type UnitName } from './units.ts';

/** What can be chosen, the usual one first. */
export const choices = {
  temperature: ['celsius', 'fahrenheit'],
  torque: ['newtonCentimetre', 'kilogramCentimetre', 'ounceInch'],
  rotation: ['revolutionPerMinute', 'radianPerSecond'],
} as const satisfies Readonly<Record<string, readonly UnitName[]>>;
export type UnitKind = keyof typeof choices;
export type UnitWish = { readonly [Kind in UnitKind]: (typeof choices)[Kind][number] };
export const usualWish: UnitWish = {
  temperature: 'celsius',
  torque: 'newtonCentimetre',
  rotation: 'revolutionPerMinute',
};

export interface ShownUnit {
  readonly unit: string;
  /** Of a value in the result's own unit. */
  value(own: number): number;
  /** Of a difference, a half-width, a standard uncertainty, a slope: offsets don't count. */
  difference(own: number): number;
}
/** `size` of a value picks between a unit and a thousandth of it. */
export function shownUnit(unit: string, size: number, wish: UnitWish): ShownUnit {
  if (unit === 'ohm') return thousandths('Ω', size);
  if (unit === 's') return thousandths('s', size);
  if (unit === 'F') return scaled('µF', 1e6);
  if (unit === 'K') return temperatureDifference(wish);
  if (unit === 'rpm/V') return perVolt(wish);
  const own = ownNames[unit];
  return own ? converted(own, wishedFor(own, size, wish)) : scaled(unitSymbol(unit), 1);
}
/** Units of results that stand in the table of units. */
const ownNames: Readonly<Record<string, UnitName>> = {
  C: 'celsius',
  rpm: 'revolutionPerMinute',
  'N.m': 'newtonMetre',
  'mN·m': 'millinewtonMetre',
  'm/s': 'metrePerSecond',
  m: 'metre',
};
/** The name in the table of units of a result's own unit; undefined for one that is not there. */
export const tableName = (unit: string): UnitName | undefined => ownNames[unit];

function wishedFor(own: UnitName, size: number, { temperature, torque, rotation }: UnitWish): UnitName {
  const { dimension } = units[own];
  if (dimension === 'temperature') return temperature;
  if (dimension === 'rotational speed') return rotation;
  if (dimension !== 'torque') return own;
  const small = Math.abs(toSi(size, own)) < units.newtonCentimetre.factor;
  return torque === 'newtonCentimetre' && small ? 'millinewtonMetre' : torque;
}
function converted(own: UnitName, shown: UnitName): ShownUnit {
  if (own === shown) return scaled(units[own].symbol, 1);
  return {
    unit: units[shown].symbol,
    value: (x) => fromSi(toSi(x, own), shown),
    difference: (x) => (x * units[own].factor) / units[shown].factor,
  };
}
const scaled = (unit: string, factor: number): ShownUnit => ({
  unit,
  value: (x) => x * factor,
  difference: (x) => x * factor,
});
const thousandths = (symbol: string, size: number): ShownUnit =>
  Math.abs(size) < 1 ? scaled(`m${symbol}`, 1000) : scaled(symbol, 1);

/** A kelvin is a difference of one degree Celsius. */
const temperatureDifference = ({ temperature }: UnitWish): ShownUnit =>
  temperature === 'celsius'
    ? scaled('K', 1)
    : scaled(units[temperature].symbol, 1 / units[temperature].factor);

/** A motor's kV; in radians a second, as its torque constant asks for it. */
function perVolt({ rotation }: UnitWish): ShownUnit {
  if (rotation === 'revolutionPerMinute') return scaled('rpm/V', 1);
  return scaled('rad/(V·s)', units.revolutionPerMinute.factor);
}
/** 's/60°' is told in seconds, as 's' is: what was kept in the one holds for the other. */
export const sameUnit = (a: string, b: string): boolean => plain(a) === plain(b);
const plain = (unit: string): string => (unit === servoSpeed ? 's' : unit);
/** Servo speed as the trade tells it: seconds that 60 degrees take. */
export const servoSpeed = 's/60°';
