// SPDX-License-Identifier: MIT
// Meters, lines, adoption, thermistors, feed, store and age. Every bad input of the README's table is done here and
// its words compared. What a fit must give is computed by hand beside each check.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { budgetOf, difference, standardU } from '../measurements/quantity.ts';
import { descriptorSchema, type RigDescription, type Tap } from '../samples/rig-description.ts';
import { adoption, tapU, withLine } from './adoption.ts';
import { agedStore, missingNote, oldNotes } from './calibration-age.ts';
import { CalibrationRefused } from './calibration-refused.ts';
import { feedFromMeter, feedFromTaps, feedOhm, feedOutcome, feedResistance } from './limited-feed.ts';
import { lineCalibration, pointOf, zeroPoint, type CalibrationPoint } from './line-calibration.ts';
import { together } from './line-estimate.ts';
import { meterSchema, readingOf, readingU, usualMeter, type Meter } from './meter.ts';
import { requireNearTaps } from './point-checks.ts';
import { storeBytes, storeOf } from './store-form.ts';
import { iceCalibration, togetherCalibration } from './thermistor-calibration.ts';

const top = new URL('../../../../', import.meta.url);
const descriptor = descriptorSchema.parse(
  JSON.parse(readFileSync(new URL('firmware-protocol/firmware/descriptor.json', top), 'utf8')),
);
const rig: RigDescription = { descriptor, store: null };
const tapOf = (id: string) => descriptor.taps.find((tap) => tap.id === id)!;
const [rail, narrow, motor] = ['railVoltage', 'packCurrentNarrow', 'thermistorMotor'].map(tapOf);
const label = { date: '2026-11-25', origin: 'meter' };
const volts = (shown: number, meter: number): CalibrationPoint =>
  pointOf(rail, usualMeter, { shown, shownU: 0.003, meter });
const railLine = (...points: CalibrationPoint[]) => lineCalibration(descriptor, rail, points, label);
/** Code and words of a refusal. */
function refusal(act: () => unknown): { code: string; words: string } {
  try {
    act();
  } catch (error) {
    if (error instanceof CalibrationRefused) return { code: error.code, words: error.message };
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('a meter', () => {
  it('gives rectangular parts: 0.5 % + 2 counts of 10 mV at 7.6 V (JCGM 100, 4.3.7)', () => {
    const reading = readingOf(usualMeter, 'voltage', 7.6);
    expect(reading.gainU).toBeCloseTo(0.038 / Math.sqrt(3), 9);
    expect(reading.zeroU).toBeCloseTo(0.02 / Math.sqrt(3), 9);
    expect(reading.roundingU).toBeCloseTo(0.005 / Math.sqrt(3), 9);
    expect(readingU(reading)).toBeCloseTo(Math.sqrt((0.038 ** 2 + 0.02 ** 2 + 0.005 ** 2) / 3), 9);
  });
  it('reads in the smallest range that shows the value', () =>
    expect(readingOf(usualMeter, 'voltage', 3.942).range.upTo).toBe(6));
});
describe('two estimates of a line made one', () => {
  it('is the weighted mean where nothing ties gain and offset', () => {
    const one = together(
      { gain: 1, offset: 0, gainVar: 4, offsetVar: 1, covar: 0 },
      { gain: 2, offset: 1, gainVar: 1, offsetVar: 1, covar: 0 },
    );
    expect(one.gain).toBeCloseTo(1.8, 12);
    expect(one.gainVar).toBeCloseTo(0.8, 12);
    expect(one.offset).toBeCloseTo(0.5, 12);
  });
});
describe('a line through points', () => {
  it('finds gain and offset of a tap that is off within its tolerances', () => {
    const exact: Meter = {
      name: 'exact',
      ranges: [{ quantity: 'voltage', upTo: 60, percentOfReading: 0.001, counts: 0, resolution: 1e-5 }],
    };
    const at = (v: number) => pointOf(rail, exact, { shown: (v - 0.012) / 1.004, shownU: 1e-5, meter: v });
    const line = lineCalibration(descriptor, rail, [at(3.9), at(7.8)], label);
    expect(line.gain).toBeCloseTo(1.004, 4);
    expect(line.offset).toBeCloseTo(0.012, 3);
    expect(line.gainU).toBeLessThan(1e-4);
  });
  it('never knows a tap worse than the rig declares, and a shared per cent stays in the gain', () => {
    const line = railLine(volts(3.94, 3.942), volts(7.89, 7.9));
    const declaredGain = (2 * Math.hypot(0.005, 0.002)) / Math.sqrt(3);
    expect(line.gainU).toBeLessThanOrEqual(declaredGain);
    expect(line.gainU).toBeGreaterThan(0.5 * declaredGain);
    expect(line.correlation).toBeLessThan(0);
  });
  it('counts a current tap from its zero: the gain is known about as well as the greatest point', () => {
    const amps = (a: number) => pointOf(narrow, usualMeter, { shown: a, shownU: 0.004, meter: a });
    const line = lineCalibration(
      descriptor,
      narrow,
      [zeroPoint(0, 0.004), amps(1.1), amps(3.4), amps(5)],
      label,
    );
    const at5 = Math.hypot(0.05, 0.03) / Math.sqrt(3) / 5;
    const declared = Math.hypot(narrow.error.gain / Math.sqrt(3), 0.002 / Math.sqrt(3));
    expect(line.gainU / 2).toBeGreaterThan(0.8 / Math.hypot(1 / at5, 1 / declared));
    expect(line.gainU / 2).toBeLessThan(1.3 / Math.hypot(1 / at5, 1 / declared));
  });
});
it('takes points of a sound meter whose two ranges lean to opposite ends of what it specifies', () => {
  const low = 3.9 * 1.005 + 0.002;
  const high = 7.8 * 0.995 - 0.02;
  const { offset } = railLine(volts(3.9, Number(low.toFixed(3))), volts(7.8, Number(high.toFixed(2))));
  expect(Math.abs(offset)).toBeLessThan(rail.error.offset);
});
it('takes a zero that needs no meter where the meter reads all else high by its counts', () => {
  const amps = (a: number) => pointOf(narrow, usualMeter, { shown: a, shownU: 0.004, meter: a + 0.03 });
  const points = [zeroPoint(0, 0.002), amps(1.1), amps(2.3), amps(3.4)];
  expect(lineCalibration(descriptor, narrow, points, label).gain).toBeCloseTo(1.0, 1);
});
describe('adoption', () => {
  it('takes a line that makes U smaller, with both figures in words', () => {
    const line = railLine(volts(3.94, 3.942), volts(7.89, 7.9));
    const { adopted, tightness, words } = adoption(rig, rail, line);
    expect(adopted).toBe(true);
    expect(tightness[0].calibratedU).toBeLessThan(0.7 * tightness[0].declaredU);
    expect(words).toMatch(/railVoltage: adopted \(U at 6 V: 0\.\d+ % as declared, 0\.\d+ % calibrated/);
    expect(tapU(withLine(rig, line), rail, 6)).toBeCloseTo(tightness[0].calibratedU, 9);
  });
  it('leaves a line of a poor meter, and says so with both figures', () => {
    const ranges = [
      { quantity: 'voltage' as const, upTo: 20, percentOfReading: 3, counts: 5, resolution: 0.1 },
    ];
    const point = (shown: number, meter: number) =>
      pointOf(rail, { name: 'poor', ranges }, { shown, shownU: 0.003, meter });
    const { adopted, words } = adoption(rig, rail, railLine(point(3.94, 3.9), point(7.89, 7.9)));
    expect(adopted).toBe(false);
    expect(words).toMatch(
      /not adopted, as it would not make the uncertainty smaller.*as declared.*calibrated/,
    );
  });
  it('keeps the tighter one of before, unless both disagree', () => {
    const line = railLine(volts(3.94, 3.942), volts(7.89, 7.9));
    const tight = withLine(rig, { ...line, gainU: line.gainU / 4, offsetU: line.offsetU / 4 });
    expect(adoption(tight, rail, line).words).toMatch(/calibration of 2026-11-25 is tighter/);
    const other = withLine(rig, { ...line, gain: line.gain * 1.02, gainU: 1e-3, offsetU: 1e-3 });
    expect(adoption(other, rail, line)).toMatchObject({ adopted: true });
    expect(adoption(other, rail, line).words).toMatch(/differs .* by more than both allow/);
  });
});
describe('thermistors', () => {
  const at = (id: string, shownC: number) => ({ tap: tapOf(id), shownC, u: 0.02 });
  it('are moved to 0 C in ice', () =>
    expect(iceCalibration(at('thermistorMotor', 0.31), label)).toMatchObject({ gain: 1, offset: -0.31 }));
  it('are moved to their mean when they lie together', () => {
    const lines = togetherCalibration([at('thermistorMotor', 21.4), at('thermistorServo', 21.0)], label);
    expect(lines.map(({ offset }) => offset)).toEqual([expect.closeTo(-0.2, 9), expect.closeTo(0.2, 9)]);
  });
});
describe('the limited feed', () => {
  it('is the slope of volts over amperes; the diode is no part of it', () => {
    const points = [0.1, 0.3, 0.5, 0.7].map((x) => ({ x, y: 0.25 + 9.8 * x, ux: 1e-4, uy: 1e-3 }));
    const line = feedFromTaps(10, points, 0.01, label);
    expect(line.gain).toBeCloseTo(0.98, 6);
    expect(line.gainU).toBeCloseTo(2 * 0.0098, 3);
    expect(feedOutcome(10, line)).toMatchObject({ adopted: true });
    expect(feedResistance(withLine(rig, line)).ohm).toBeCloseTo(9.8, 5);
  });
  it('is a quantity for analyses: 10 ohm within 5 % as declared, a rectangle of u = 0.289 ohm', () => {
    const declared = feedOhm(rig);
    expect(declared.value).toBe(10);
    expect(standardU(declared)).toBeCloseTo(0.5 / Math.sqrt(3), 9);
    expect(budgetOf(declared)[0]).toMatchObject({ shape: 'rectangular', origin: 'rig description' });
  });
  it('is known to what the meter shows once it is calibrated: 1 % + 2 counts of 0.1 ohm at 9.8', () => {
    const line = feedFromMeter(10, readingOf(usualMeter, 'resistance', 9.8), label);
    const calibrated = feedOhm(withLine(rig, line));
    expect(calibrated.value).toBeCloseTo(9.8, 9);
    expect(standardU(calibrated)).toBeCloseTo(Math.hypot(0.098, 0.2, 0.05) / Math.sqrt(3), 6);
    expect(budgetOf(calibrated)[0]).toMatchObject({ shape: 'normal', origin: 'calibration of 2026-11-25' });
  });
  it('is one error in what it is used for twice: it falls out of a difference', () =>
    expect(standardU(difference(feedOhm(rig), feedOhm(rig)))).toBe(0));
});
describe('the rig’s memory', () => {
  const line = {
    tap: 'railVoltage',
    gain: 1.0012,
    offset: -0.0113,
    gainU: 0.0043,
    offsetU: 0.0177,
    correlation: -0.81,
    ...label,
  };
  it('gives back what it was given, and has room for every tap that can be calibrated', () => {
    const idle = ['jointProbe', 'midCell', 'polarity'];
    const ids = descriptor.taps.map(({ id }) => id).filter((id) => !idle.some((name) => id.startsWith(name)));
    const calibration = [...ids, 'limitedFeed'].map((tap) => ({ ...line, tap }));
    const store = { serial: 'B-12', name: 'bench two', calibration };
    const back = storeOf(storeBytes(store, descriptor), descriptor);
    expect(back.calibration).toHaveLength(11);
    back.calibration.forEach((kept, i) => {
      expect(kept).toMatchObject({ tap: calibration[i].tap, date: '2026-11-25', origin: 'meter' });
      for (const field of ['gain', 'offset', 'gainU', 'offsetU', 'correlation'] as const)
        expect(kept[field]).toBeCloseTo(line[field], 4);
    });
  });
  it('widens an old calibration and says so, and names what is missing', () => {
    const store = { serial: '', name: '', calibration: [{ ...line, date: '2024-11-01' }] };
    const [old] = agedStore(store, '2026-11-25').calibration;
    expect(old.gainU).toBeCloseTo(2 * line.gainU, 9);
    expect(old.origin).toBe('meter, old: U x 2');
    expect(oldNotes(store, '2026-11-25')[0]).toMatch(
      /railVoltage of 2024-11-01 is older than a year.*common practice, no source/,
    );
    expect(agedStore({ ...store, calibration: [line] }, '2027-11-25').calibration[0]).toEqual(line);
    expect(missingNote(descriptor, store, ['railVoltage', 'railCurrent'])).toEqual([
      'Not calibrated: railCurrent. The declared tolerances of the rig count, which are wider.',
    ]);
  });
});
const near = (...taken: [Tap, CalibrationPoint][]) =>
  requireNearTaps(
    descriptor,
    taken.map(([tap, point]) => ({ tap, point })),
  );
describe('a reading beside its taps', () => {
  // 7.6 V: what the meter allows (0.5 % + 2 counts) and the rail tap's declared gain, reference and offset.
  it('is let through where the parts allow it', () => expect(near([rail, volts(7.6, 7.7)])).toBeUndefined());
  it('is let through where one tap of several is near it: the other is the tap’s affair', () =>
    expect(near([rail, volts(7.6, 7.6)], [tapOf('packVoltage'), volts(5.4, 7.6)])).toBeUndefined());
  it('is told where all of them are far', () =>
    expect(refusal(() => near([rail, volts(7.6, 3.8)], [tapOf('packVoltage'), volts(7.5, 3.8)])).code).toBe(
      'implausiblePoint',
    ));
});
const bad: Readonly<Record<string, () => unknown>> = {
  'one point': () => railLine(volts(7.6, 7.6)),
  'points too near each other': () => railLine(volts(7.6, 7.6), volts(7.9, 7.9)),
  'points swapped': () => railLine(volts(3.94, 7.9), volts(7.89, 3.942)),
  'gain 30 % off': () => railLine(volts(3.94, 5.12), volts(7.89, 10.26)),
  'offset beyond the parts': () => railLine(volts(3.94, 4.35), volts(7.89, 8.3)),
  'one point misread': () => railLine(volts(3.94, 3.942), volts(5.9, 6.4), volts(7.89, 7.9)),
  'reading beyond the meter': () => readingOf(usualMeter, 'current', 12.4),
  'no number': () => readingOf(usualMeter, 'voltage', Number.NaN),
  'tap shows no number': () => railLine({ ...volts(3.9, 3.9), shown: Number.NaN }, volts(7.8, 7.8)),
  'tap at its end': () => railLine(volts(3.9, 3.9), volts(10.1, 10.1)),
  'meter without the range': () =>
    readingOf({ ...usualMeter, ranges: usualMeter.ranges.slice(0, 1) }, 'current', 1),
  'thermistor out of the ice': () => iceCalibration({ tap: motor, shownC: 21.4, u: 0.02 }, label),
  'one thermistor together': () => togetherCalibration([{ tap: motor, shownC: 21.4, u: 0.02 }], label),
  'reading far from the tap': () => near([rail, volts(7.6, 6.7)]),
  'feed 40 % off': () => feedFromMeter(10, readingOf(usualMeter, 'resistance', 14), label),
  'too many for the memory': () =>
    storeBytes({ serial: '', name: 'n'.repeat(500), calibration: [] }, descriptor),
};
const badMeters: Readonly<Record<string, unknown>> = {
  'meter: negative counts': { ...usualMeter, ranges: [{ ...usualMeter.ranges[0], counts: -1 }] },
  'meter: count too coarse': { ...usualMeter, ranges: [{ ...usualMeter.ranges[0], resolution: 1 }] },
  'meter: per cent missing': {
    ...usualMeter,
    ranges: [{ ...usualMeter.ranges[0], percentOfReading: undefined }],
  },
  'meter: no ranges': { ...usualMeter, ranges: [] },
};
describe('bad input', () => {
  const rows = readFileSync(new URL('README.md', import.meta.url), 'utf8')
    .split('\n')
    .map((line) => /^\| (.+?) \| `(\w+)` \| `(.+)` \|$/.exec(line))
    .filter((row) => row !== null)
    .map(([, given, code, words]) => ({ given, code, words }));
  it('is in the table of the README, every one', () =>
    expect(rows.map(({ given }) => given).toSorted()).toEqual(
      [...Object.keys(bad), ...Object.keys(badMeters)].toSorted(),
    ));
  it.each(rows.filter(({ given }) => given in bad))('$given', ({ given, code, words }) => {
    const told = refusal(bad[given]);
    expect(told.code).toBe(code);
    expect(told.words).toContain(words);
  });
  it.each(rows.filter(({ given }) => given in badMeters))('$given', ({ given, words }) => {
    const parsed = meterSchema.safeParse(badMeters[given]);
    expect(parsed.error?.issues[0].message).toBe(words);
  });
});
