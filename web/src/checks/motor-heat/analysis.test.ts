// SPDX-License-Identifier: MIT
// What a heat run refuses. The fit itself is held in core/measurements/two-body-fit.test.ts against the plant's nodes.
import { describe, expect, it } from 'vitest';
import { testRig } from '#core/samples/scan-block-fixture';
import { marmot, syntheticRun, type Signals } from '../synthetic-run-fixture.ts';
import { analyse, results } from './analysis.ts';
import type { Evidence } from './evidence.ts';

const idle = { fromS: 1.2, toS: 2 };
const course = { heating: { fromS: 2, toS: 3 }, cooling: { fromS: 3, toS: 4 } };
const proven = { turned: true, failSafeS: 0.3, idle, course };
function reasons(change: Partial<Evidence> = {}, canC = 25): string[] {
  const tap: Signals['tap'] = (id) =>
    id === 'thermistorMotor' ? canC : id.startsWith('thermistor') ? 25 : 0.2;
  const fast = ['controllerVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'] as const;
  const samples = syntheticRun({ tap, feedOnS: 1, endS: 4, fast });
  return analyse({ evidence: { ...proven, ...change }, samples, rig: testRig(), car: marmot }).map(
    (finding) => (finding.measured ? 'measured' : finding.reason),
  );
}
describe('motor-heat refuses', () => {
  it('a motor that never turned, for both results', () =>
    expect(reasons({ turned: false })).toEqual(results.map(() => expect.stringMatching(/sensor cable/))));
  it('a run that broke off before the heating', () =>
    expect(reasons({ course: null })[0]).toMatch(/before the heating/));
  it('a motor that was warm at the start', () =>
    expect(reasons({}, 34)[0]).toMatch(/9\.\d K away from the air.*come to the air's temperature/));
  it('a course too short to hold a rise', () => expect(reasons()[0]).toMatch(/rose by less than 5 K/));
  it('a thermistor that was lost', () => expect(reasons({}, 300)[0]).toMatch(/"thermistorMotor" was lost/));
});
