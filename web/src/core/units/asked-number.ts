// SPDX-License-Identifier: MIT
// A figure that a person is asked for: its unit and bounds, and how what was typed is read. For the command line and
// the page alike. It knows no unit's meaning and no check.
import { z } from 'zod';
import { unitSymbol } from './unit-symbol.ts';

export const numberWantedSchema = z.object({ unit: z.string(), min: z.number(), max: z.number() });
export type NumberWanted = z.infer<typeof numberWantedSchema>;
export type Asked =
  { readonly ok: true; readonly value: number } | { readonly ok: false; readonly words: string };

/** Point or comma; anything else is no number. */
export function numberIn(line: string): number {
  const text = line.trim().replace(',', '.').replace('\u2212', '-');
  return /^[+-]?(\d+(\.\d*)?|\.\d+)$/.test(text) ? Number(text) : Number.NaN;
}
export const boundsWords = ({ unit, min, max }: NumberWanted): string =>
  `from ${min} to ${max}${unit === '' ? '' : ` ${unitSymbol(unit)}`}`;

/** The number where it is one inside the bounds, else what is wrong and what to type. */
export function askedNumber(text: string, wanted: NumberWanted): Asked {
  const value = numberIn(text);
  const give = `Type a number ${boundsWords(wanted)}, without its unit.`;
  if (text.trim() === '') return { ok: false, words: `Nothing was typed. ${give}` };
  if (Number.isNaN(value)) return { ok: false, words: `"${text.trim()}" is not a number. ${give}` };
  if (value < wanted.min || value > wanted.max)
    return {
      ok: false,
      words: `${value} ${unitSymbol(wanted.unit)} is outside what can be. ${give}`.replace('  ', ' '),
    };
  return { ok: true, value };
}
