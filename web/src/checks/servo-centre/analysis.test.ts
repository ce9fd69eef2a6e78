// SPDX-License-Identifier: MIT
// A horn that is read off straight: the figures by hand arithmetic, and the spline's steps against a circle's parts.
import { describe, expect, it } from 'vitest';
import type { Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { ScanColumns } from '#core/samples/scan-columns';
import { judge } from '#core/verdicts/judge';
import { marmot } from '../synthetic-run-fixture.ts';
import { analyse } from './analysis.ts';
import { evidenceSchema } from './evidence.ts';
import { limits, toothDegrees } from './limits.ts';

const read = (atCentreDegrees: number, longerDegrees: number) =>
  analyse({
    evidence: { rest: { fromS: 4, toS: 4.3 }, atCentreDegrees, longerDegrees, longerByUs: 300 },
    samples: new ScanColumns(testRig()),
    rig: testRig(),
    car: marmot,
  });
const told = (finding: ReturnType<typeof read>[number]) =>
  finding.measured ? finding.notes.join(' ') : finding.reason;

describe('servo-centre analysis', () => {
  it('tells size, sub-trim and turn of readings on either side', () => {
    const [off, trim, turn] = read(4, 34) as Measured[];
    expect(off.value).toBe(4);
    expect(trim.value).toBeCloseTo(-40, 9);
    expect(turn.value).toBeCloseTo(0.1, 9);
    const [offLeft, trimLeft, turnLeft] = read(-4, -34) as Measured[];
    expect([offLeft.value, trimLeft.value, turnLeft.value]).toEqual([
      4,
      expect.closeTo(-40, 9),
      expect.closeTo(-0.1, 9),
    ]);
  });
  it('says which way a longer pulse turns', () => {
    expect(told(read(4, 34)[2])).toMatch(/turns the horn clockwise/);
    expect(told(read(4, -26)[2])).toMatch(/turns the horn anticlockwise/);
  });
  it('does not count the zero of the protractor in the turn', () => {
    const [off, , turn] = read(4, 34) as Measured[];
    expect(off.budget.map(({ source }) => source)).toContain("the protractor's zero");
    expect(turn.budget.map(({ source }) => source)).not.toContain("the protractor's zero");
  });
  it('refuses turn and trim of a horn that did not turn, and keeps the offset', () => {
    const [off, trim, turn] = read(4, 6);
    expect(off.measured).toBe(true);
    for (const finding of [trim, turn])
      expect(told(finding)).toMatch(/turned by only 2\.0 degrees for 300 µs/);
  });
  it('takes no evidence without a length between the readings', () =>
    expect(
      evidenceSchema.safeParse({
        rest: { fromS: 0, toS: 1 },
        atCentreDegrees: 1,
        longerDegrees: 2,
        longerByUs: 0,
      }).success,
    ).toBe(false));
});
describe('servo-centre limit', () => {
  // A full circle over the number of teeth; 15.7, 15.0 and 14.4 degrees by arithmetic.
  it.each([
    [23, 15.7],
    [24, 15],
    [25, 14.4],
  ])('a spline of %d teeth has steps of %d degrees', (teeth, degrees) =>
    expect(toothDegrees(teeth)).toBeCloseTo(degrees, 1),
  );
  const limitOf = (splineTeeth?: number) =>
    limits({ ...marmot, servo: { ...marmot.servo, splineTeeth } })['horn-offset'];
  it('is half a tooth and a degree; without a count, of the widest usual step', () => {
    expect(limitOf(25).max).toBeCloseTo(7.2 + 1, 9);
    expect(limitOf().max).toBeCloseTo(360 / 23 / 2 + 1, 9);
    expect(limitOf().source).toMatch(/unknown teeth.*no source/);
  });
  it('passes a horn on its nearest tooth and fails one a tooth off', () => {
    const verdict = (degrees: number) => judge(read(degrees, degrees + 30)[0], limitOf(24)).verdict;
    expect([verdict(7), verdict(-7), verdict(11), verdict(-15)]).toEqual(['pass', 'pass', 'fail', 'fail']);
  });
});
