// SPDX-License-Identifier: MIT
// Reads what a person typed, "240 oz.in" or "165 F", into SI. A figure without a unit, of another quantity or of
// none is told in words with the units there are. It knows the table of units only.
import { toSi, units, unitsOf, type Dimension, type UnitName } from './units.ts';

export type Typed =
  | { readonly ok: true; readonly si: number; readonly unit: UnitName }
  | { readonly ok: false; readonly words: string };

/** One comma stands for a decimal point. */
const shape = /^([+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d+)?)\s*(.*)$/i;

export function typedQuantity(text: string, dimension: Dimension): Typed {
  const match = shape.exec(text.trim().replaceAll('\u2212', '-'));
  if (!match) return wrong(`"${text.trim()}" does not begin with a number.`, dimension);
  const [, figure, unitText] = match;
  const value = Number(figure.replace(',', '.'));
  if (unitText === '') return wrong(`${figure} has no unit.`, dimension);
  const name = named(unitText);
  if (!name) return wrong(`"${unitText}" is no unit this bench knows.`, dimension);
  if (units[name].dimension !== dimension)
    return wrong(
      `${units[name].symbol} is a unit of ${units[name].dimension}, not of ${dimension}.`,
      dimension,
    );
  const si = toSi(value, name);
  if (!Number.isFinite(si)) return wrong(`${figure} is too large.`, dimension);
  return { ok: true, si, unit: name };
}
function named(text: string): UnitName | undefined {
  const plain = text
    .toLowerCase()
    .replaceAll(/\s*[·*-]\s*|(?<=[a-z])\s+(?=[a-z])/g, '.')
    .replaceAll(/\s/g, '')
    .replace('º', '°');
  return (Object.keys(units) as UnitName[]).find((name) =>
    (units[name].spellings as readonly string[]).includes(plain),
  );
}
const wrong = (words: string, dimension: Dimension): Typed => ({
  ok: false,
  words: `${words} Type a ${dimension} such as ${examples[dimension]}; units: ${unitsOf(dimension)
    .map((name) => units[name].symbol)
    .join(', ')}.`,
});
const examples: Readonly<Record<Dimension, string>> = {
  torque: '240 oz.in',
  temperature: '165 F',
  speed: '30 mph',
  length: '9 in',
  'rotational speed': '30000 rpm',
};
