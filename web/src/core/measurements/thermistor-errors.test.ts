// SPDX-License-Identifier: MIT
// A thermistor's budget by hand: T^2/B for a share of resistance, T (T - T25)/T25 for a share of B (derivatives of the
// B equation), a code's size from the divider. Makers' tables stand in tests/outside/temperature.ts.
import { describe, expect, it } from 'vitest';
import { testRig } from '../samples/scan-block-fixture.ts';
import type { RigDescription, Store } from '../samples/rig-description.ts';
import { codeAt, stepOf, thermistorC } from '../samples/tap-scaling.ts';
import { syntheticRun } from '#checks/synthetic-run-fixture';
import { contactTemperature, bodyC } from './contact-temperature.ts';
import { budgetOf, standardU } from './quantity.ts';
import { NotMeasurable, reading } from './tap-reading.ts';
import { thermistorLines } from './thermistor-errors.ts';

const root3 = Math.sqrt(3);
/** Parts of 1 %: thermistor, pull-up and B. 298.15^2/3950 x 1 % is 0.225 K, of two parts 0.45 K. */
function rigOf(calibration: Store['calibration'] = []): RigDescription {
  const rig = testRig({ calibration });
  const taps = rig.descriptor.taps.map((tap) =>
    tap.quantity === 'temperature' ? { ...tap, error: { ...tap.error, gain: 0.01, offset: 0.45 } } : tap,
  );
  return { ...rig, descriptor: { ...rig.descriptor, taps } };
}
const rig = rigOf();
const tap = rig.descriptor.taps.find(({ id }) => id === 'thermistorMotor')!;
const widthOf = (name: string, celsius: number, of = rig) =>
  (thermistorLines(of, tap, celsius).find(([{ id }]) => id.startsWith(name))?.[1] ?? Number.NaN) * root3;
const parts = (share: { r?: number; b?: number; p?: number }, celsius: number): number => {
  const [r25, b, pullUp] = [
    1e4 * (1 + (share.r ?? 0)),
    3950 * (1 + (share.b ?? 0)),
    1e4 * (1 + (share.p ?? 0)),
  ];
  const ohm = r25 * Math.exp(b * (1 / (celsius + 273.15) - 1 / 298.15));
  return thermistorC((1024 * ohm) / (ohm + pullUp), 1e4, 1e4, 3950) - celsius;
};

describe('what the parts make of a temperature', () => {
  it.each([0, 25, 65, 100])('is what parts 1 %% off really show at %d C, within a fiftieth', (celsius) => {
    expect(widthOf('r25', celsius)).toBeCloseTo(Math.abs(parts({ r: 0.01 }, celsius)), 1);
    expect(widthOf('r25', celsius) / Math.abs(parts({ r: 0.01 }, celsius))).toBeCloseTo(1, 1.5);
    expect(widthOf('pull-up', celsius) / Math.abs(parts({ p: 0.01 }, celsius))).toBeCloseTo(1, 1.5);
    expect(Math.abs(Math.abs(widthOf('beta', celsius)) - Math.abs(parts({ b: 0.01 }, celsius)))).toBeLessThan(
      0.02,
    );
  });
  it('B: nothing at 25 C, 0.94 K at 100 C (1 % x 373.15 x 75/298.15)', () => {
    expect(widthOf('beta', 25)).toBe(0);
    expect(widthOf('beta', 100)).toBeCloseTo(0.9387, 3);
  });
});
describe('a code of a thermistor', () => {
  it('is 0.088 K at 25 C and 0.56 K at 100 C, fewer codes being more degrees', () => {
    expect(stepOf(tap, 5, 512)).toBeCloseTo(-0.0879, 3);
    expect(stepOf(tap, 5, codeAt(tap, 100, 5))).toBeCloseTo(-0.564, 2);
    const near = [511.5, 512.5].map((code) => thermistorC(code, 1e4, 1e4, 3950));
    expect(stepOf(tap, 5, 512)).toBeCloseTo(near[1] - near[0], 6);
  });
  it('is found again from its temperature, at any supply', () =>
    expect(codeAt(tap, thermistorC(321.5, 1e4, 1e4, 3950), 4.8)).toBeCloseTo(321.5, 9));
});
describe('a calibration in ice', () => {
  const kept = {
    tap: 'thermistorMotor',
    gain: 1,
    offset: 0.3,
    gainU: 0,
    offsetU: 0.2,
    correlation: 0,
    date: '2026-11-01',
    origin: 'ice',
  };
  const iced = rigOf([kept]);
  it('leaves only itself at 0 C', () => {
    const lines = thermistorLines(iced, tap, 0);
    expect(Math.hypot(...lines.map(([, u]) => u))).toBeCloseTo(0.1, 9);
    expect(lines[0][0].origin).toBe('calibration of 2026-11-01');
  });
  it('leaves at 65 C what grew since: 1 % of B from -0.229 to +0.454 K, the parts by the squares of T', () => {
    expect(widthOf('beta', 65, iced)).toBeCloseTo(0.4537 + 0.229, 3);
    expect(widthOf('r25', 65, iced)).toBeCloseTo(
      0.225 * ((338.15 / 298.15) ** 2 - (273.15 / 298.15) ** 2),
      6,
    );
  });
});
describe('a reading', () => {
  const run = (motorC: (timeS: number) => number, of = rig) =>
    syntheticRun(
      {
        tap: (id, timeS) => (id === 'thermistorMotor' ? motorC(timeS) : 25),
        feedOnS: 1,
        endS: 6,
        fast: ['controllerVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'],
      },
      of,
    );
  const stretch = { fromS: 2, toS: 5 };
  it('has a whole budget: no line that is no number, 0.3 to 0.5 K at 25 C', () => {
    const shown = reading({ samples: run(() => 25), rig }, 'thermistorMotor', stretch);
    for (const { u } of budgetOf(shown)) expect(u).toBeGreaterThan(0);
    expect(shown.value).toBeCloseTo(25, 0.5);
    expect(standardU(shown)).toBeGreaterThan(0.17);
    expect(standardU(shown)).toBeLessThan(0.25);
  });
  it('of a body: 46 K above the air are shown of 50, known to about 2.4 % of the rise', () => {
    const body = contactTemperature(
      { samples: run(() => 71), rig },
      'thermistorMotor',
      'thermistorAmbient',
      stretch,
    );
    expect(body.value).toBeCloseTo(75, 0.3);
    expect(budgetOf(body).find(({ source }) => source.startsWith('contact'))!.u).toBeCloseTo(
      ((46 / 0.92 ** 2) * 0.02) / root3,
      1,
    );
  });
  it('of a body that warms by 0.2 K/s is 12 s, 2.4 K, ahead of what is shown', () => {
    const samples = run((timeS) => 40 + 0.2 * (timeS - 3.5));
    const body = contactTemperature({ samples, rig }, 'thermistorMotor', 'thermistorAmbient', stretch);
    expect(body.value).toBeCloseTo(25 + (15 + 2.4) / 0.92, 0.3);
  });
  it('solves the sensor: lag x rise + shown = air + share (body - air)', () => {
    const body = bodyC(40, 0.1, 12, 22, 0.9);
    expect(22 + 0.9 * (body - 22)).toBeCloseTo(40 + 1.2, 9);
  });
  it('refuses a thermistor that was not read, with its name', () => {
    const without = testRig({}, ['thermistorAmbient']);
    const read = () =>
      contactTemperature(
        { samples: run(() => 25), rig: without },
        'thermistorMotor',
        'thermistorAmbient',
        stretch,
      );
    expect(read).toThrow(NotMeasurable);
    expect(read).toThrow(/thermistorAmbient/);
  });
});
