// SPDX-License-Identifier: MIT
// Taps against closed forms: the one-pole step response, the thermistor equation against a published table form,
// tolerances within their declared widths, non-linearity within 1 LSB.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../seeded-random.ts';
import { nonLinearityLsb } from './non-linearity.ts';
import type { PlantOutputs } from './plant.ts';
import { drawRigErrors, type RigErrors, type TapName, tapNames } from './rig-errors.ts';
import { tapIndex, TapFilters } from './tap-filters.ts';
import { thermistorOhm, thermistorV } from './thermistor.ts';

const quiet: PlantOutputs = {
  packV: 0,
  controllerV: 0,
  packA: 0,
  railV: 0,
  railA: 0,
  midCellV: 0,
  probeV: 0,
  probeWide: false,
  thermistorC: [25, 25, 25, 25],
  hall: [false, false, false],
};
const seeds = Array.from({ length: 200 }, (_, seed) => seed);
const drawn = seeds.map((seed) => drawRigErrors(seededRandom(seed, 'rig')));

describe('tap filters', () => {
  const errors = drawn[0];

  it.each(['packVoltage', 'railVoltage', 'railCurrent'] as const)('%s settles as 1 - exp(-t/RC)', (name) => {
    const filters = new TapFilters(errors);
    filters.step(quiet, 8e-6);
    const tap = errors.taps[name];
    const tau = 1 / (2 * Math.PI * tap.cornerHz);
    const loud = { ...quiet, packV: 8, railV: 8, railA: 8 };
    for (let i = 0; i < 50; i++) filters.step(loud, 8e-6);
    const start = tap.zeroV + tap.offsetV;
    const rise = 8 * tap.voltsPerUnit * (1 + tap.gain);
    expect(filters.at(tapIndex(name), 1)).toBeCloseTo(start + rise * (1 - Math.exp((-50 * 8e-6) / tau)), 10);
  });

  it('shows each step of the plant since the mark, and a straight line between two', () => {
    const filters = new TapFilters(errors);
    const at = tapIndex('railVoltage');
    filters.step(quiet, 8e-6);
    const seen = [0, 8, 0, 8].map((railV) => {
      filters.mark();
      filters.step({ ...quiet, railV }, 8e-6);
      return filters.at(at, 1);
    });
    const again = new TapFilters(errors);
    again.step(quiet, 8e-6);
    again.step(quiet, 8e-6);
    again.mark();
    for (const railV of [8, 0, 8]) again.step({ ...quiet, railV }, 8e-6);
    [0, 1, 2, 3].forEach((k) => expect(again.at(at, k / 3)).toBeCloseTo(seen[k], 12));
    expect(again.at(at, 0.5)).toBeCloseTo((seen[1] + seen[2]) / 2, 12);
  });

  it('has half the power at its corner: 3 dB', () => {
    const filters = new TapFilters(errors);
    const tap = errors.taps.packVoltage;
    const dt = 1e-6;
    let peak = 0;
    for (let i = 0; i < 40_000; i++) {
      const packV = 4 + 2 * Math.sin(2 * Math.PI * tap.cornerHz * i * dt);
      filters.step({ ...quiet, packV }, dt);
      if (i > 20_000) peak = Math.max(peak, filters.at(0, 1));
    }
    const centre = tap.zeroV + tap.offsetV + 4 * tap.voltsPerUnit * (1 + tap.gain);
    const amplitude = (peak - centre) / (2 * tap.voltsPerUnit * (1 + tap.gain));
    expect(amplitude).toBeCloseTo(Math.SQRT1_2, 3);
  });

  it('shows the joint probe through the range that its jumper sets', () => {
    const filters = new TapFilters(errors);
    const settled = (outputs: PlantOutputs) => {
      for (let i = 0; i < 200; i++) filters.step(outputs, 8e-6);
      return filters.at(tapIndex('jointProbe'), 1);
    };
    const risesBy = (probeV: number, probeWide: boolean) =>
      settled({ ...quiet, probeV, probeWide }) - settled({ ...quiet, probeWide });
    expect(Math.abs(risesBy(0.02, false) / 1 - 1)).toBeLessThan(0.006);
    expect(Math.abs(risesBy(0.2, true) - 1)).toBeLessThan(0.006);
    expect(Math.abs(settled(quiet) - 2.5)).toBeLessThan(0.026);
    expect(Math.abs(settled({ ...quiet, probeWide: true }) - 0.3)).toBeLessThan(0.026);
  });

  it('gives the nominal pin volts within the declared errors', () => {
    const full: PlantOutputs = { ...quiet, packV: 10, packA: 10, railV: 10, railA: 9 };
    const expected: Partial<Record<TapName, number>> = {
      packVoltage: 5,
      packCurrentNarrow: 4.8,
      railVoltage: 5,
      railCurrent: 5,
      packCurrentWide: 1,
      polarity: 2.5 + 10 / 6,
    };
    const filters = new TapFilters(errors);
    filters.step(full, 8e-6);
    for (const [name, volts] of Object.entries(expected)) {
      expect(Math.abs(filters.at(tapIndex(name as TapName), 1) / volts - 1)).toBeLessThan(0.03);
    }
  });
});

describe('tolerances of a rig', () => {
  const within = (pick: (errors: RigErrors) => number, low: number, high: number): void => {
    const values = drawn.map(pick);
    expect(Math.min(...values)).toBeGreaterThanOrEqual(low);
    expect(Math.max(...values)).toBeLessThanOrEqual(high);
    // 200 rectangular draws fill their width.
    expect(Math.max(...values) - Math.min(...values)).toBeGreaterThan(0.85 * (high - low));
  };

  it('fill their declared widths and never leave them', () => {
    within((e) => e.clock, -0.005, 0.005);
    within((e) => e.avccV, 4.8, 5.2);
    within((e) => e.referenceV, 2.495, 2.505);
    within((e) => e.taps.packVoltage.gain, -0.005, 0.005);
    within((e) => e.taps.railVoltage.offsetV, -0.01, 0.01);
  });

  it('stay within what the descriptor declares for each tap', () => {
    const file = new URL('../../firmware-protocol/firmware/descriptor.json', import.meta.url);
    const { taps } = JSON.parse(readFileSync(file, 'utf8')) as {
      taps: {
        id: string;
        scale: { zeroV: number; unitsPerV: number };
        cornerHz: number;
        error: Record<string, number>;
      }[];
    };
    for (const name of tapNames) {
      const declared = taps.find(({ id }) => id === name)!;
      for (const { taps: own } of drawn) {
        expect(own[name].voltsPerUnit).toBeCloseTo(1 / declared.scale.unitsPerV, 6);
        expect(own[name].zeroV).toBe(declared.scale.zeroV);
        expect(Math.abs(own[name].gain)).toBeLessThanOrEqual(declared.error.gain);
        expect(Math.abs(own[name].offsetV * declared.scale.unitsPerV)).toBeLessThanOrEqual(
          declared.error.offset,
        );
      }
    }
  });

  it('share the shunt between the two pack current taps', () => {
    const difference = (e: RigErrors) => e.taps.packCurrentNarrow.gain - e.taps.packCurrentWide.gain;
    for (const errors of drawn) expect(Math.abs(difference(errors))).toBeLessThanOrEqual(0.01);
  });

  it('keep the non-linearity within 1 LSB, zero at both ends', () => {
    const fractions = Array.from({ length: 400 }, (_, i) => i / 399);
    const worst = (errors: RigErrors) =>
      Math.max(...fractions.map((fraction) => Math.abs(nonLinearityLsb(errors, fraction))));
    expect(Math.max(...drawn.map(worst))).toBeLessThanOrEqual(1);
    expect(Math.max(...drawn.map((errors) => Math.abs(nonLinearityLsb(errors, 0))))).toBeLessThan(1e-12);
    expect(Math.max(...drawn.map((errors) => Math.abs(nonLinearityLsb(errors, 1))))).toBeLessThan(1e-12);
  });
});

describe('thermistor', () => {
  const nominal = { r25Ohm: 1e4, betaK: 3950, pullUpOhm: 1e4 };

  it('follows the B equation: the ratio of 25 C and 85 C gives B back (IEC 60539-1, B25/85)', () => {
    const ratio = thermistorOhm(nominal, 25) / thermistorOhm(nominal, 85);
    const b = Math.log(ratio) / (1 / 298.15 - 1 / 358.15);
    expect(b).toBeCloseTo(3950, 6);
    expect(thermistorOhm(nominal, 25)).toBeCloseTo(1e4, 9);
  });

  it('stands at half the supply at 25 C and at the supply when open', () => {
    expect(thermistorV(nominal, 25, 5)).toBeCloseTo(2.5, 9);
    expect(thermistorV(nominal, null, 5)).toBe(5);
  });
});
