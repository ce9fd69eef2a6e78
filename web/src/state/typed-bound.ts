// SPDX-License-Identifier: MIT
// Reads a bound or a rating as a person typed it, with its unit or without, into the unit of the result. Torques,
// temperatures, speeds and lengths by the core's table of units, electrical ones with their prefixes. Pure.
import { servoSpeed, tableName, usualWish, type UnitWish } from '#core/units/shown-unit';
import { typedQuantity } from '#core/units/typed-quantity';
import { fromSi, units, unitsOf, type Dimension, type UnitName } from '#core/units/units';
import { figure, shownUnit } from './figures.ts';

export type TypedBound =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly words: string };

/** Spellings of the plain unit; each takes the prefixes below. */
const spellings: Readonly<Record<string, readonly string[]>> = {
  A: ['A'],
  V: ['V'],
  ohm: ['ohm', 'Ω', 'Ohm'],
  s: ['s'],
  W: ['W'],
};
const { fahrenheit, revolutionPerMinute } = units;
/** Units that stand in no table, and what else may be typed for them: one of it in the result's unit. */
const others: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  K: { K: 1, C: 1, F: fahrenheit.factor },
  'rpm/V': {
    'rpm/V': 1,
    'rad/(V·s)': 1 / revolutionPerMinute.factor,
    'rad/s/V': 1 / revolutionPerMinute.factor,
  },
  F: { F: 1, mF: 1e-3, uF: 1e-6 },
  [servoSpeed]: { 's/60': 1, s: 1, ms: 1e-3 },
};
const prefixes: readonly (readonly [string, number])[] = [
  ['', 1],
  ['m', 1e-3],
  ['k', 1e3],
];
const shape = /^([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+))\s*(.*)$/;

/** `unit` of the result; a figure alone is taken to be in the unit shown beside the field. */
export function typedBound(text: string, unit: string, shown: string): TypedBound {
  const plain = text.trim().replaceAll('\u2212', '-');
  const match = shape.exec(plain);
  if (!match) return wrong(`"${plain}" does not begin with a number.`, unit, shown);
  const [, number, given] = match;
  const name = tableName(unit);
  if (name) return ofTable(given === '' ? `${plain} ${shown}` : plain, name);
  const factor = factorOf(given === '' ? shown : given, unit);
  if (factor === undefined) return wrong(`"${given}" is no unit of this result.`, unit, shown);
  return { ok: true, value: Number((Number(number.replace(',', '.')) * factor).toPrecision(12)) };
}
function ofTable(text: string, name: UnitName): TypedBound {
  const typed = typedQuantity(text, units[name].dimension);
  return typed.ok ? { ok: true, value: Number(fromSi(typed.si, name).toPrecision(12)) } : typed;
}
function factorOf(given: string, unit: string): number | undefined {
  const plain = given.replace('µ', 'u').replace('°', '');
  if (plain === unit) return 1;
  if (others[unit]) return others[unit][plain];
  for (const spelling of spellings[unit] ?? [])
    for (const [prefix, factor] of prefixes) if (plain === prefix + spelling) return factor;
  return undefined;
}
function wrong(words: string, unit: string, shown: string): TypedBound {
  const known = spellings[unit]
    ? prefixes.map(([prefix]) => `${prefix}${spellings[unit][0]}`)
    : Object.keys(others[unit] ?? { [unit]: 1 });
  return {
    ok: false,
    words: `${words} Type a figure in ${shown}, or with its unit: ${known.join(', ')}.`,
  };
}
/** What stands beside a field of that unit, for values of that size. */
export const fieldUnit = (unit: string, size: number, wish?: UnitWish): string =>
  shownUnit(unit, size, wish).unit;
/** Beside a figure that a run asks for: it is taken as it is typed, in the unit that is asked. */
export const askedUnit = (unit: string): string => fieldUnit(unit, 1, usualWish);

/** "1.18 N·m, 118 N·cm, 167 oz·in": the same in the other units of its kind, for whoever typed another. */
export function otherUnits(si: number, dimension: Dimension): string {
  const say = (name: UnitName) => {
    const value = fromSi(si, name);
    const decimals = Math.max(0, 2 - Math.floor(Math.log10(Math.max(Math.abs(value), 1e-9))));
    return `${figure(value, Math.min(decimals, 3))}\u00a0${units[name].symbol}`;
  };
  const usual = unitsOf(dimension).filter((name) => name !== 'millinewtonMetre');
  return usual.map(say).join(', ');
}
