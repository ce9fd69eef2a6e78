// SPDX-License-Identifier: MIT
// What a calibration would bring, against the plan of the reference board: volts to about 0.6 of what they were, the
// narrow pack current to about two thirds, and nothing where the meter is no better than the parts.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { descriptorSchema, type RigDescription } from '../samples/rig-description.ts';
import { tapU, withLine } from './adoption.ts';
import { expectedCalibration } from './expected-calibration.ts';
import type { Meter } from './meter.ts';

const top = new URL('../../../../', import.meta.url);
const descriptor = descriptorSchema.parse(
  JSON.parse(readFileSync(new URL('firmware-protocol/firmware/descriptor.json', top), 'utf8')),
);
const rig: RigDescription = { descriptor, store: null };
const tapOf = (id: string) => descriptor.taps.find((tap) => tap.id === id)!;
const left = (id: string, at: number, meter?: Meter): number => {
  const line = expectedCalibration(rig, id, meter);
  return line ? tapU(withLine(rig, line), tapOf(id), at) / tapU(rig, tapOf(id), at) : 1;
};
const poor: Meter = {
  name: 'poor',
  ranges: [
    { quantity: 'voltage', upTo: 20, percentOfReading: 3, counts: 5, resolution: 0.1 },
    { quantity: 'current', upTo: 10, percentOfReading: 4, counts: 5, resolution: 0.01 },
  ],
};
const fine: Meter = {
  name: 'fine',
  ranges: [{ quantity: 'voltage', upTo: 60, percentOfReading: 0.05, counts: 1, resolution: 0.001 }],
};
describe('what a calibration would leave of U', () => {
  it.each([
    ['packVoltage', 7.6, 0.5, 0.75],
    ['controllerVoltage', 7.6, 0.5, 0.75],
    ['railVoltage', 6, 0.5, 0.75],
    ['packCurrentNarrow', 4, 0.5, 0.85],
    ['railCurrent', 5, 0.5, 0.85],
  ])('%s at %d with a usual meter', (id, at, least, most) => {
    expect(left(id, at)).toBeGreaterThan(least);
    expect(left(id, at)).toBeLessThan(most);
  });
  it('is less with a finer meter', () =>
    expect(left('railVoltage', 6, fine)).toBeLessThan(0.6 * left('railVoltage', 6)));
  it.each(['railVoltage', 'packCurrentNarrow'])('is all of it with a poor meter: %s', (id) =>
    expect(expectedCalibration(rig, id, poor)).toBeNull(),
  );
});
describe('nothing is promised', () => {
  it.each([
    ['a tap without a wiring in the guide', 'jointProbe'],
    ['a tap that the rig lacks', 'railTemperature'],
    ['a thermistor in ice: from there on its curve bends by more than its parts are off', 'thermistorMotor'],
  ])('of %s', (_, id) => expect(expectedCalibration(rig, id)).toBeNull());
  it('of a current with a meter that has no range for it', () =>
    expect(expectedCalibration(rig, 'railCurrent', fine)).toBeNull());
  it('of a tap that is calibrated', () => {
    const line = expectedCalibration(rig, 'railVoltage')!;
    expect(expectedCalibration(withLine(rig, line), 'railVoltage')).toBeNull();
  });
});
