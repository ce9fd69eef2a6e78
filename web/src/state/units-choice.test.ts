// SPDX-License-Identifier: MIT
// The chosen units are kept and hold for whatever shows a value; what is kept but is no unit, is none.
import { afterEach, describe, expect, it } from 'vitest';
import { chosenUnits } from './chosen-units.ts';
import { unitChoices } from './unit-choices.ts';
import { UnitsChoice } from './units-choice.svelte.ts';
import { usualWish } from '#core/units/shown-unit';
import { liveFigure, readingWords } from './figures.ts';
import { limitWords, resultDetail, type ResultLine } from './run-summary.ts';
import { verdictPicture } from './verdict-picture.ts';
import { typedBound, fieldUnit } from './typed-bound.ts';

function memory(kept: Record<string, string> = {}) {
  return {
    getItem: (key: string) => kept[key] ?? null,
    setItem: (key: string, value: string) => void (kept[key] = value),
  };
}
afterEach(() => void new UnitsChoice(memory()));
const plain = (text: string) => text.replaceAll(/\s/g, ' ');
const limit = { max: 80, unit: 'C', kind: 'common practice', source: 'none' } as const;

describe('the choice of units', () => {
  it('is the usual ones until others are chosen, and then kept', () => {
    const kept = memory();
    const first = new UnitsChoice(kept);
    expect(first.wish).toEqual(usualWish);
    first.choose('temperature', 'fahrenheit');
    first.choose('torque', 'ounceInch');
    first.choose('rotation', 'radianPerSecond');
    expect(new UnitsChoice(kept).wish).toEqual({
      temperature: 'fahrenheit',
      torque: 'ounceInch',
      rotation: 'radianPerSecond',
    });
  });
  it('is the usual one where something else was kept, or a unit of another kind', () =>
    expect(new UnitsChoice(memory({ temperature: 'kelvins', torque: 'celsius' })).wish).toEqual(usualWish));
  it('takes no unit of another kind', () =>
    expect(() => new UnitsChoice(memory()).choose('torque', 'celsius')).toThrow(RangeError));
  it('is asked by name and symbol', () =>
    expect(unitChoices.map(({ title, choices }) => [title, ...choices.map(({ symbol }) => symbol)])).toEqual([
      ['Temperature', '°C', '°F'],
      ['Torque', 'N·cm', 'kgf·cm', 'oz·in'],
      ['Rotational speed', 'rpm', 'rad/s'],
    ]));
});
/** 70 C are 158 F, 80 C 176 F, 2 K 3.6 F by the definition F = 1.8 C + 32. */
describe('degrees Fahrenheit hold', () => {
  const inFahrenheit = () => new UnitsChoice(memory({ temperature: 'fahrenheit' }));
  it('for results, their limits and their picture', () => {
    inFahrenheit();
    expect(plain(readingWords(70, [68, 72], 'C'))).toBe('158 ± 4 °F');
    const line = { value: 70, interval: [68, 72], unit: 'C' } as unknown as ResultLine;
    expect(plain(resultDetail(line))).toBe('158 ± 4 °F');
    expect(plain(limitWords(limit, 70))).toBe('at most 176 °F, common practice, no source');
    const picture = verdictPicture(70, [68, 72], limit);
    expect(plain(picture.posts[0].text)).toBe('limit 176 °F');
    expect(picture.words).toBe('158 °F, plus or minus 4, against a limit of 176');
    expect(picture.ticks.every(({ text }) => Number(text) % 5 === 0)).toBe(true);
  });
  it('for what the rig reads now', () => {
    inFahrenheit();
    expect(plain(liveFigure(25, 'C'))).toBe('77.0 °F');
  });
  it('for a limit that is typed, alone or with its unit, and for a difference', () => {
    inFahrenheit();
    expect(fieldUnit('C', 80)).toBe('°F');
    expect(typedBound('176', 'C', '°F')).toEqual({ ok: true, value: 80 });
    expect(typedBound('80 C', 'C', '°F')).toEqual({ ok: true, value: 80 });
    expect(typedBound('3.6', 'K', fieldUnit('K', 1))).toEqual({ ok: true, value: 2 });
  });
  it('and go again', () => {
    inFahrenheit().choose('temperature', 'celsius');
    expect(chosenUnits()).toEqual(usualWish);
    expect(plain(limitWords(limit, 70))).toMatch(/^at most 80 °C/);
  });
});
it('a speed limit typed in radians a second is kept in rpm: 100 rad/s are 954.93 rpm', () => {
  new UnitsChoice(memory({ rotation: 'radianPerSecond' }));
  const typed = typedBound('100', 'rpm', fieldUnit('rpm', 900));
  expect(typed.ok && typed.value).toBeCloseTo(954.93, 2);
  const kv = typedBound('100', 'rpm/V', fieldUnit('rpm/V', 900));
  expect(kv.ok && kv.value).toBeCloseTo(954.93, 2);
});
it('a servo speed is typed in s/60° or ms', () => {
  expect(fieldUnit('s/60°', 0.12)).toBe('s/60°');
  for (const text of ['0.12', '0.12 s/60°', '0.12 s', '120 ms'])
    expect(typedBound(text, 's/60°', 's/60°'), text).toEqual({ ok: true, value: 0.12 });
});
