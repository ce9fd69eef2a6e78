// SPDX-License-Identifier: MIT
// How taps stand with their calibration, and the plot of one, on the reference rig's own description.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { lineCalibration, pointOf, zeroPoint } from '#core/calibration/line-calibration';
import { usualMeter } from '#core/calibration/meter';
import { descriptorSchema } from '#core/samples/rig-description';
import { calibrateTitle, outcomeReason, tightnessRows } from './calibration-screen.ts';
import { lineWords, pointRows, residualPlot } from './residual-plot.ts';
import { calibrationTally, plusMinus, tapCalibrations } from './tap-calibration.ts';

const file = new URL('../../../firmware-protocol/firmware/descriptor.json', import.meta.url);
const descriptor = descriptorSchema.parse(JSON.parse(readFileSync(file, 'utf8')));
const tapOf = (id: string) => descriptor.taps.find((tap) => tap.id === id)!;
const rail = tapOf('railVoltage');
const points = [
  pointOf(rail, usualMeter, { shown: 3.93, shownU: 0.003, meter: 3.95 }),
  pointOf(rail, usualMeter, { shown: 7.86, shownU: 0.003, meter: 7.9 }),
];
const line = lineCalibration(descriptor, rail, points, { date: '2026-11-27', origin: 'meter' });
const rigWith = (date: string) => ({
  descriptor,
  store: { serial: '', name: '', calibration: [{ ...line, date }] },
});
const ids = ['railVoltage', 'railCurrent', 'thermistorMotor', 'limitedFeed'];
const rows = (date: string) => tapCalibrations(rigWith(date), ids, '2026-11-27');
const half = (words: string) => Number(/±\u00a0([\d.]+)/.exec(words)![1]);

describe('a tap', () => {
  it('is calibrated, old or missing by its date', () => {
    expect(rows('2026-11-27').map(({ state }) => state)).toEqual([
      'calibrated',
      'missing',
      'missing',
      'missing',
    ]);
    expect(calibrationTally(rows('2025-01-01'))).toBe('0 of 4 calibrated, 1 old, 3 missing');
  });
  it('calibrated has the smaller U, says since when and by what, and what it is made of', () => {
    const [row] = rows('2026-11-27');
    expect(half(row.now)).toBeLessThan(half(row.declared!));
    expect(row).toMatchObject({ date: '2026-11-27', by: 'with the meter', unit: 'V' });
    expect(row.budget[0].origin).toBe('calibration of 2026-11-27');
  });
  it('old counts wider than fresh', () =>
    expect(half(rows('2025-01-01')[0].now)).toBeGreaterThan(half(rows('2026-11-27')[0].now)));
  it('is told in small units, temperatures in kelvin', () => {
    expect(plusMinus(0.0213, 'V')).toBe('±\u00a021\u00a0mV');
    expect(plusMinus(0.42, 'C')).toBe('±\u00a00.4\u00a0K');
  });
});
describe('its plot', () => {
  const rig = { descriptor, store: null };
  it('has the rig 20 mV below the meter below zero, the line through both points', () => {
    const plot = residualPlot(rig, rail, points, line);
    expect(plot.dots[0].y).toBeGreaterThan(plot.zeroY);
    expect(plot.dots[1].y).toBeGreaterThan(plot.dots[0].y);
    expect(plot.line).toMatch(/^M64\.0 /);
    expect(plot.yTitle).toBe('Rig minus meter, mV');
  });
  it('draws currents from their own zero, so that an offset is no error of theirs', () => {
    const current = tapOf('railCurrent');
    const taken = [
      zeroPoint(0.03, 0.001),
      pointOf(current, usualMeter, { shown: 2.03, shownU: 0.002, meter: 2 }),
    ];
    const plot = residualPlot(rig, current, taken, null);
    for (const { y } of plot.dots) expect(y).toBeCloseTo(plot.zeroY, 6);
    expect(pointRows(current, taken).rows[1].difference).toBe('+30');
  });
  it('is said in words, gain and zero with their U', () =>
    expect(lineWords(rail, line)).toMatch(/^Gain 1\.00\d.±.0\.00\d, zero .*.mV\.$/));
});
describe('words', () => {
  it('of an outcome come without the name of the tap and the figures that stand beside them', () => {
    const tightness = [{ at: 6, declaredU: 0.043, calibratedU: 0.023 }];
    const ended = { tap: 'railVoltage', state: 'adopted', points: [], tightness } as const;
    const words = 'railVoltage: adopted (U at 6 V: 0.72 % as declared, 0.38 % calibrated).';
    expect(outcomeReason({ ...ended, words, points: [], tightness })).toBe('');
    const moved = `${words} It differs from the calibration of 2026-01-01 by more than both allow.`;
    expect(outcomeReason({ ...ended, words: moved, points: [], tightness })).toMatch(/^It differs from/);
    const refused = {
      ...ended,
      state: 'refused',
      words: 'rail voltage: points 1 and 2 look swapped.',
    } as const;
    expect(outcomeReason({ ...refused, points: [], tightness: [] })).toBe('Points 1 and 2 look swapped.');
    expect(tightnessRows({ ...ended, words, points: [], tightness }, 'V')[0]).toMatchObject({ left: 53 });
  });
  it.each([
    [[], 'Calibrate the rig'],
    [['railVoltage'], 'Calibrate rail voltage'],
    [['railVoltage', 'packVoltage'], 'Calibrate 2 taps'],
  ])('of what is calibrated: %s', (taps, title) => expect(calibrateTitle(taps)).toBe(title));
});
