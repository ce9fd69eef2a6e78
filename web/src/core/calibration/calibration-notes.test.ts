// SPDX-License-Identifier: MIT
// What a result is told of the calibrations behind it: only of taps that weigh in it, by the words of its budget.
import { describe, expect, it } from 'vitest';
import { budgetLine, measuredAs } from '../history/history-fixture.ts';
import { testRig } from '../samples/scan-block-fixture.ts';
import { agedStore } from './calibration-age.ts';
import { calibrationNotes } from './calibration-notes.ts';
import { expectedCalibration } from './expected-calibration.ts';

const line = {
  tap: 'railVoltage',
  gain: 1,
  offset: 0,
  gainU: 0.004,
  offsetU: 0.01,
  correlation: 0,
  date: '2026-11-01',
  origin: 'meter',
};
const volts = measuredAs(6, [
  budgetLine('gain of railVoltage', 0.02),
  budgetLine('gain of railCurrent', 0.001),
]);
const kept = measuredAs(6, [
  budgetLine('gain of railVoltage', 0.02, { origin: 'calibration of 2026-11-01' }),
]);
const notes = (finding: Parameters<typeof calibrationNotes>[1], rig = testRig()) =>
  calibrationNotes(rig, finding, (tap) => expectedCalibration(rig, tap));

describe('a result is told', () => {
  it('of a tap that is not calibrated, and not of one that hardly weighs', () =>
    expect(notes(volts)).toEqual([
      'Not calibrated: railVoltage. The declared tolerances of the rig count, which are wider.',
    ]));
  it('of a tap whose calibration would not be adopted', () =>
    expect(notes(measuredAs(20, [budgetLine('gain of packCurrentWide', 0.2)]))).toEqual([
      'Not calibrated: packCurrentWide. The declared tolerances of the rig count; a calibration would not be adopted, as it would hardly be tighter.',
    ]));
  it('of an old calibration', () => {
    const store = agedStore({ serial: '', name: '', calibration: [line] }, '2028-01-01');
    expect(notes(kept, testRig(store))[0]).toMatch(
      /^The calibration of railVoltage of 2026-11-01 is older than a year/,
    );
  });
});
describe('nothing is told', () => {
  it('of a calibration that is fresh', () =>
    expect(notes(kept, testRig({ calibration: [line] }))).toEqual([]));
  it('of a speed that hangs on the clock', () =>
    expect(notes(measuredAs(2e4, [budgetLine("the rig's clock", 50)], 'rpm'))).toEqual([]));
  it('of a result that was not measured', () =>
    expect(notes({ measured: false, id: 'a', title: 'a', unit: 'V', reason: 'a gap' })).toEqual([]));
});
