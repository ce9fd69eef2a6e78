// SPDX-License-Identifier: MIT
// Two taps calibrated with one meter: what its per cent makes them off by is the same in both, so it falls out of their
// difference; held against drawn meters and taps. Volts and amperes of one meter are ranges of their own.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sampleStandardDeviation } from 'simple-statistics';
import { seededRandom, type SeededRandom } from '#sim/seeded-random';
import {
  budgetOf,
  combined,
  correlation,
  difference,
  standardU,
  uncertain,
} from '../measurements/quantity.ts';
import { scaleLines } from '../measurements/tap-reading.ts';
import { descriptorSchema, type RigDescription } from '../samples/rig-description.ts';
import { tapU, withLine } from './adoption.ts';
import { lineCalibration, pointOf, zeroPoint, type CalibrationLine } from './line-calibration.ts';
import { meterNumber, usualMeter } from './meter.ts';
import { storeBytes, storeOf } from './store-form.ts';

const top = new URL('../../../../', import.meta.url);
const descriptor = descriptorSchema.parse(
  JSON.parse(readFileSync(new URL('firmware-protocol/firmware/descriptor.json', top), 'utf8')),
);
const tapOf = (id: string) => descriptor.taps.find((tap) => tap.id === id)!;
const [pack, controller, narrow] = ['packVoltage', 'controllerVoltage', 'packCurrentNarrow'].map(tapOf);
const label = { date: '2026-11-25', origin: 'meter' };
const sources = [3.9, 7.8];
const exactly = (volts: number) => volts;

function voltLine(tap: typeof pack, tapShows = exactly, meterShows = exactly): CalibrationLine {
  const points = sources.map((volts) =>
    pointOf(tap, usualMeter, { shown: tapShows(volts), shownU: 0.003, meter: meterShows(volts) }),
  );
  return lineCalibration(descriptor, tap, points, label);
}
const ampLine = () =>
  lineCalibration(
    descriptor,
    narrow,
    [
      zeroPoint(0, 0.004),
      ...[1.1, 2.3, 3.4].map((a) => pointOf(narrow, usualMeter, { shown: a, shownU: 0.004, meter: a })),
    ],
    label,
  );
const rigWith = (...lines: CalibrationLine[]): RigDescription =>
  lines.reduce<RigDescription>(withLine, { descriptor, store: null });
const reads = (rig: RigDescription, tap: typeof pack, value: number) =>
  uncertain(value, scaleLines(rig, tap, value, tap.quantity === 'current'));

describe('two voltage taps of one meter', () => {
  const rig = rigWith(voltLine(pack), voltLine(controller));
  const [a, b] = [reads(rig, pack, 7.6), reads(rig, controller, 7.6)];
  it('share most of what they are off by', () => expect(correlation(a, b)).toBeGreaterThan(0.4));
  it('are known to no less each: the parts add to what the line says', () => {
    const plain = rigWith({ ...voltLine(pack), meter: undefined });
    expect(tapU(rig, pack, 7.6) / tapU(plain, pack, 7.6)).toBeCloseTo(1, 3);
  });
  it('are off apart by less than if each had a meter of its own', () => {
    const other = { ...voltLine(controller), meter: { number: 5, share: voltLine(controller).meter!.share } };
    const strange = rigWith(voltLine(pack), other);
    const apart = difference(reads(strange, pack, 7.6), reads(strange, controller, 7.6));
    expect(standardU(difference(a, b))).toBeLessThan(0.8 * standardU(apart));
    expect(budgetOf(difference(a, b)).some(({ source }) => source === 'gain of the meter on voltage')).toBe(
      false,
    );
  });
});
it('volts and amperes of one meter share nothing that a data sheet states: a resistance counts both', () => {
  const rig = rigWith(voltLine(pack), ampLine());
  const [v, i] = [reads(rig, pack, 7.6), reads(rig, narrow, 4)];
  expect(correlation(v, i)).toBe(0);
  const ohm = combined([v, i], (volts, amps) => volts / amps);
  expect(standardU(ohm) / ohm.value).toBeCloseTo(Math.hypot(standardU(v) / 7.6, standardU(i) / 4), 6);
});
describe('drawn meters and taps', () => {
  /** Per cent and counts by range, as the usual meter states them; rounding to its resolution. */
  function drawnMeter(random: SeededRandom) {
    const [low, high] = [0, 1].map(() => ({
      gain: random.between(-0.005, 0.005),
      counts: random.between(-2, 2),
    }));
    return (volts: number) => {
      const [{ gain, counts }, step] = volts <= 6 ? [low, 0.001] : [high, 0.01];
      return Math.round((volts * (1 + gain) + counts * step) / step) * step;
    };
  }
  const drawnTap = (random: SeededRandom, reference: number) => {
    const [gain, offset] = [random.between(-0.005, 0.005), random.between(-0.02, 0.02)];
    return (volts: number) => volts * (1 + gain + reference) + offset + 0.003 * random.gaussian();
  };
  it('are off apart, calibrated with one meter, by no more than the budget says, and not by much less', () => {
    const random = seededRandom(11, 'one meter');
    const errors = Array.from({ length: 600 }, () => {
      const [meter, reference] = [drawnMeter(random), random.between(-0.002, 0.002)];
      const [first, second] = [pack, controller].map((tap) => {
        const shows = drawnTap(random, reference);
        const { gain, offset } = voltLine(tap, shows, meter);
        return gain * shows(7.6) + offset;
      });
      return first - second;
    });
    const rig = rigWith(voltLine(pack), voltLine(controller));
    const told = standardU(difference(reads(rig, pack, 7.6), reads(rig, controller, 7.6)));
    const seen = sampleStandardDeviation(errors);
    console.log(`difference of two taps at 7.6 V: seen ${seen.toFixed(4)} V, told ${told.toFixed(4)} V`);
    expect(seen).toBeLessThan(1.1 * told);
    expect(seen).toBeGreaterThan(0.4 * told);
  });
});
describe('the rig’s memory', () => {
  const line = voltLine(pack);
  it('keeps the meter and its share, to a hundredth', () => {
    const [back] = storeOf(
      storeBytes({ serial: '', name: '', calibration: [line] }, descriptor),
      descriptor,
    ).calibration;
    expect(back.origin).toBe('meter');
    expect(back.meter!.number).toBe(meterNumber(usualMeter));
    expect(back.meter!.share).toBeCloseTo(line.meter!.share, 1.7);
  });
  it('has room for every tap that can be calibrated, their meters and a number of the rig', () => {
    const idle = ['jointProbe', 'midCell', 'polarity'];
    const ids = descriptor.taps.map(({ id }) => id).filter((id) => !idle.some((name) => id.startsWith(name)));
    const far = {
      ...line,
      gain: 0.9948,
      offset: -0.0113,
      gainU: 0.0093,
      offsetU: 0.0177,
      correlation: -0.943,
      meter: { number: 988, share: 1 },
    };
    const { meter: _, ...unmetered } = far;
    const warm = {
      ...unmetered,
      gain: 1,
      gainU: 0,
      offset: -0.61234,
      offsetU: 0.24321,
      correlation: 0,
      origin: 'together',
    };
    const calibration = [
      ...ids.map((tap) => ({ ...(tap.startsWith('thermistor') ? warm : far), tap })),
      { ...unmetered, tap: 'limitedFeed', offset: 0, offsetU: 0, correlation: 0, origin: 'taps' },
    ];
    const bytes = storeBytes({ serial: '1z141z3', name: 'bench two', calibration }, descriptor);
    expect(storeOf(bytes, descriptor).calibration).toHaveLength(11);
  });
  it('takes a row from before meters were kept', () =>
    expect(
      storeOf(
        new TextEncoder().encode('{"serial":"","name":"","calibration":[[0,1,2,3,4,5,20000,0]]}'),
        descriptor,
      ).calibration[0],
    ).toMatchObject({ origin: 'meter', tap: 'packVoltage' }));
});
