// SPDX-License-Identifier: MIT
// The calibration of studies against what the rig of a seed truly is: its drawn errors, which no line ever sees.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { descriptorSchema, type RigDescription } from '#core/samples/rig-description';
import { seededRandom } from '#sim/seeded-random';
import { drawRigErrors, type TapName } from '#sim/wiring/rig-errors';
import { solvedCalibration } from './solved-calibration.ts';

const file = new URL('../../firmware-protocol/firmware/descriptor.json', import.meta.url);
const plain: RigDescription = {
  descriptor: descriptorSchema.parse(JSON.parse(readFileSync(file, 'utf8'))),
  store: null,
};
const seed = 7;
const truth = drawRigErrors(seededRandom(seed, 'rig').stream('rig'));
/** What the tap shows of a true value when the supply is read with the reference as declared, converter apart. */
function shown(tap: TapName, value: number): number {
  const { zeroV, voltsPerUnit, gain, offsetV } = truth.taps[tap];
  const pinV = zeroV + offsetV + voltsPerUnit * (1 + gain) * value;
  return (pinV * (2.5 / truth.referenceV) - zeroV) / voltsPerUnit;
}

describe('the calibration of a rig in a study', () => {
  const { store } = solvedCalibration(plain, seed);
  const lines = store?.calibration ?? [];
  it('is adopted on the three voltages and the two current taps that the usual meter is good enough for', () =>
    expect(lines.map(({ tap }) => tap)).toEqual(
      expect.arrayContaining([
        'packVoltage',
        'railVoltage',
        'controllerVoltage',
        'packCurrentNarrow',
        'railCurrent',
      ]),
    ));
  it.each([
    ['packVoltage', 7.6],
    ['railVoltage', 6],
    ['controllerVoltage', 7.6],
  ] as const)('brings %s back to the true %f V within 1.5 U of its line and a step', (tap, value) => {
    const line = lines.find((known) => known.tap === tap);
    if (!line) throw new Error(`${tap} was not adopted`);
    const { gain, offset, gainU, offsetU, correlation } = line;
    const u = Math.sqrt((gainU * value) ** 2 + 2 * correlation * gainU * value * offsetU + offsetU ** 2);
    expect(Math.abs(gain * shown(tap, value) + offset - value)).toBeLessThan(1.5 * u + 0.01);
  });
  it.each([
    ['packCurrentNarrow', 8],
    ['railCurrent', 5],
  ] as const)('brings a step of %s of %f A back within 1.5 U of its gain', (tap, value) => {
    const line = lines.find((known) => known.tap === tap);
    if (!line) throw new Error(`${tap} was not adopted`);
    const step = line.gain * (shown(tap, value) - shown(tap, 0));
    expect(Math.abs(step - value)).toBeLessThan(1.5 * line.gainU * value + 0.01);
  });
});
