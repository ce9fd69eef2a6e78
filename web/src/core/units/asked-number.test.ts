// SPDX-License-Identifier: MIT
// What a person types where a figure is asked: rubbish is told in words, a figure inside the bounds is taken.
import { describe, expect, it } from 'vitest';
import { askedNumber, numberIn } from './asked-number.ts';

const angle = { unit: 'degrees', min: -30, max: 30 };

describe('a figure that is asked', () => {
  it.each([
    ['', /Nothing was typed. Type a number from -30 to 30 degrees/],
    ['about five', /"about five" is not a number/],
    ['5 degrees', /"5 degrees" is not a number.*without its unit/],
    ['1e1', /not a number/],
    ['--3', /not a number/],
    ['31', /31 degrees is outside what can be. Type a number from -30 to 30/],
    ['-30.5', /outside/],
    ['Infinity', /not a number/],
  ])('"%s" is refused with what to type', (text, told) => {
    const asked = askedNumber(text, angle);
    expect(asked.ok ? asked.value : asked.words).toMatch(told);
  });
  it('names the unit as people write it', () =>
    expect(askedNumber('', { unit: 'us', min: 800, max: 1450 })).toMatchObject({
      words: 'Nothing was typed. Type a number from 800 to 1450 µs, without its unit.',
    }));
  it.each([
    ['4.5', 4.5],
    [' -4,5 ', -4.5],
    ['\u22124', -4],
    ['30', 30],
  ])('"%s" is taken', (text, value) => expect(askedNumber(text, angle)).toEqual({ ok: true, value }));
});
describe('a number in a line', () => {
  it.each([
    ['7.61', 7.61],
    [' 7,61 ', 7.61],
    ['-0.02', -0.02],
    ['7.6 V', Number.NaN],
    ['', Number.NaN],
    ['1e3', Number.NaN],
  ])('reads "%s"', (line, value) => expect(numberIn(line)).toBe(value));
});
