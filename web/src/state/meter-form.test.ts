// SPDX-License-Identifier: MIT
// A meter's specification as typed: what is wrong stands beside its field, what is right comes back as it was.
import { describe, expect, it } from 'vitest';
import { usualMeter } from '#core/calibration/meter';
import { meterText, rangeWords, readMeterText, typedReading, withRange } from './meter-form.ts';

const text = meterText(usualMeter);
const withFirst = (change: object) => ({
  ...text,
  ranges: [{ ...text.ranges[0], ...change }, ...text.ranges.slice(1)],
});
describe('a meter as typed', () => {
  it.each([
    ['no name', { ...text, name: ' ' }, 'name', /needs a name/],
    ['a blank figure', withFirst({ counts: '' }), 'ranges.0.counts', /counts: a number is needed/],
    ['negative counts', withFirst({ counts: '-2' }), 'ranges.0.counts', /must not be negative/],
    ['a count too coarse', withFirst({ resolution: '1' }), 'ranges.0.resolution', /hundredth of the range/],
    ['letters', withFirst({ percentOfReading: 'half' }), 'ranges.0.percentOfReading', /a number is needed/],
    ['a range just added', withRange(text), 'ranges.5.upTo', /a number is needed/],
  ])('with %s is told at its field', (_what, given, place, words) => {
    const read = readMeterText(given);
    expect(read.ok ? {} : read.errors[place]).toMatch(words);
  });
  it('comes back as it was, with a comma for a point as well', () => {
    expect(readMeterText(text)).toEqual({ ok: true, meter: usualMeter });
    expect(readMeterText(withFirst({ percentOfReading: '0,5' }))).toEqual({ ok: true, meter: usualMeter });
  });
  it('is said in words', () =>
    expect(rangeWords(usualMeter.ranges[1])).toBe('0.5\u00a0% + 2 counts of 0.01, up to 60\u00a0V'));
});
describe('a reading as typed', () => {
  it.each([
    ['7.61', 7.61],
    [' 7,61 ', 7.61],
    ['\u22120.02', -0.02],
    ['7.6 V', Number.NaN],
    ['', Number.NaN],
  ])('"%s"', (line, value) => expect(typedReading(line)).toBe(value));
});
