// SPDX-License-Identifier: MIT
// Reads a bound or a rating as a person typed it, with its unit or without, into the unit of the result. Torques,
// temperatures, speeds and lengths by the core's table of units, electrical ones with their prefixes. Pure.
import { typedQuantity } from '#core/units/typed-quantity';
import { fromSi, units, unitsOf, type Dimension, type UnitName } from '#core/units/units';
import { figure, shownUnit } from './figures.ts';

export type TypedBound =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly words: string };

const dimensionOf: Readonly<Record<string, Dimension>> = {
  'N.m': 'torque',
  C: 'temperature',
  'm/s': 'speed',
  m: 'length',
};
/** Spellings of the plain unit; each takes the prefixes below. */
const spellings: Readonly<Record<string, readonly string[]>> = {
  A: ['A'],
  V: ['V'],
  ohm: ['ohm', 'Ω', 'Ohm'],
  s: ['s'],
  W: ['W'],
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
  const dimension = dimensionOf[unit];
  if (dimension) return ofDimension(given === '' ? `${plain} ${shown}` : plain, dimension);
  const factor = factorOf(given === '' ? shown : given, unit);
  if (factor === undefined) return wrong(`"${given}" is no unit of this result.`, unit, shown);
  return { ok: true, value: Number((Number(number.replace(',', '.')) * factor).toPrecision(12)) };
}
function ofDimension(text: string, dimension: Dimension): TypedBound {
  const typed = typedQuantity(text, dimension);
  return typed.ok ? { ok: true, value: typed.si } : typed;
}
function factorOf(given: string, unit: string): number | undefined {
  const plain = given.replace('µ', 'u').replace('°', '');
  if (plain === unit) return 1;
  for (const spelling of spellings[unit] ?? [])
    for (const [prefix, factor] of prefixes) if (plain === prefix + spelling) return factor;
  return undefined;
}
function wrong(words: string, unit: string, shown: string): TypedBound {
  const known = spellings[unit] ? prefixes.map(([prefix]) => `${prefix}${spellings[unit][0]}`) : [unit];
  return {
    ok: false,
    words: `${words} Type a figure in ${shown}, or with its unit: ${known.join(', ')}.`,
  };
}
/** What stands beside a field of that unit, for values of that size. */
export const fieldUnit = (unit: string, size: number): string => shownUnit(unit, size).unit;

/** "1.18 N·m, 12.0 kg·cm, 167 oz·in": the same in the other units of its kind, for whoever typed another. */
export function otherUnits(si: number, dimension: Dimension): string {
  const say = (name: UnitName) => {
    const value = fromSi(si, name);
    const decimals = Math.max(0, 2 - Math.floor(Math.log10(Math.max(Math.abs(value), 1e-9))));
    return `${figure(value, Math.min(decimals, 3))}\u00a0${units[name].symbol}`;
  };
  return unitsOf(dimension).map(say).join(', ');
}
