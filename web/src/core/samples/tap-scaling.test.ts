// SPDX-License-Identifier: MIT
// Codes to SI and back for the taps of the reference board, by hand from its divider and shunt figures.
import { describe, expect, it } from 'vitest';
import { testRig } from './scan-block-fixture.ts';
import { codeAt, isClipped, scaled, stepOf, tapScaling, type TapScaling } from './tap-scaling.ts';

const rig = testRig();
const supplyV = 5;
const scaling = (id: string): TapScaling => tapScaling(rig, id) as TapScaling;
const codeOfPin = (volts: number): number => (volts / supplyV) * 1024;

describe('a linear tap', () => {
  it('has its zero at 0.8 V and 2.5 A a volt: the narrow pack current', () => {
    expect(scaled(scaling('packCurrentNarrow'), codeOfPin(0.8), supplyV)).toBeCloseTo(0, 9);
    expect(scaled(scaling('packCurrentNarrow'), codeOfPin(4.8), supplyV)).toBeCloseTo(10, 9);
    expect(scaled(scaling('packCurrentNarrow'), codeOfPin(0), supplyV)).toBeCloseTo(-2, 9);
  });
  it('goes with the supply: half a code of a 4.8 V supply is 4.8 V of a 2:1 divider', () =>
    expect(scaled(scaling('packVoltage'), 512, 4.8)).toBeCloseTo(4.8, 9));
  it('has steps of 9.77 mV on 10 V and 12.2 mA on 12.5 A', () => {
    expect(stepOf(scaling('packVoltage').tap, supplyV)).toBeCloseTo(10 / 1024, 9);
    expect(stepOf(scaling('packCurrentNarrow').tap, supplyV)).toBeCloseTo(12.5 / 1024, 9);
  });
  it.each(['packVoltage', 'packCurrentNarrow', 'railCurrent'])(
    'finds the code of a value again: %s',
    (id) => {
      const value = scaled(scaling(id), 321.5, supplyV);
      expect(codeAt(scaling(id).tap, value, supplyV)).toBeCloseTo(321.5, 9);
    },
  );
  it('is clipped at either end, but not at a true zero of a tap that starts there', () => {
    const ends = (id: string, code: number) =>
      isClipped(scaling(id).tap, code, 1, scaled(scaling(id), code, supplyV));
    expect(ends('packCurrentNarrow', 0)).toBe(true);
    expect(ends('packCurrentNarrow', 1023)).toBe(true);
    expect(ends('packCurrentNarrow', 500)).toBe(false);
    expect(ends('packVoltage', 0)).toBe(false);
  });
});
describe('a calibrated tap', () => {
  it('takes gain first, then offset', () => {
    const kept = { ...scaling('packVoltage'), gain: 1.01, offset: -0.02 };
    expect(scaled(kept, codeOfPin(3), supplyV)).toBeCloseTo(6 * 1.01 - 0.02, 9);
  });
});
describe('a thermistor', () => {
  it('stands at 25 C where it equals its pull-up, whatever the supply', () => {
    expect(scaled(scaling('thermistorMotor'), 512, 5)).toBeCloseTo(25, 9);
    expect(scaled(scaling('thermistorMotor'), 512, 4.8)).toBeCloseTo(25, 9);
  });
  it('falls in resistance as it warms: fewer codes are more degrees', () =>
    expect(scaled(scaling('thermistorMotor'), 300, 5)).toBeGreaterThan(45));
});
