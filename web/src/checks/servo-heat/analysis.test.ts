// SPDX-License-Identifier: MIT
// The plant's own servo case (two bodies and a lagging thermistor) heated by known power in a made-up run: the case at
// the end and at the flag must lie in the intervals, and what the run can't tell must not be told.
import { describe, expect, it } from 'vitest';
import type { Finding, Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { judge } from '#core/verdicts/judge';
import { Thermistor, TwoBodyHeat } from '#sim/physics/heat';
import type { ServoParameters } from '#sim/physics/parameters';
import { drawParameters } from '#sim/physics/population';
import { marmot, syntheticRun } from '../synthetic-run-fixture.ts';
import { analyse } from './analysis.ts';
import { limits } from './limits.ts';

const airC = 24;
const startS = 2;
const stepS = 0.1;
interface Course {
  readonly shownC: number[];
  readonly caseC: number[];
}
/** A plant's servo at steady work of so many watts, two thirds of them in the winding. */
function courseOf(seed: number, watts: number, lengthS: number): Course {
  const { servo, sensor } = drawParameters(seed);
  const body = new TwoBodyHeat(
    {
      innerJPerK: servo.windingJPerK,
      betweenKPerW: servo.windingToCaseKPerW,
      outerJPerK: servo.caseJPerK,
      toAirKPerW: servo.caseToAirKPerW,
    },
    airC,
  );
  const thermistor = new Thermistor(sensor.lagS, sensor.gain, airC);
  const course: Course = { shownC: [], caseC: [] };
  for (let t = 0; t < lengthS; t += stepS) {
    body.step((watts * stepS * 2) / 3, (watts * stepS) / 3, airC, stepS);
    thermistor.step(body.outerC, airC, stepS);
    course.shownC.push(thermistor.celsius);
    course.caseC.push(body.outerC);
  }
  return course;
}
function found(course: Course, runS: number, raceS: number): Record<string, Finding> {
  const at = (timeS: number) => course.shownC[Math.max(0, Math.floor((timeS - startS) / stepS))];
  const tap = (id: string, timeS: number) =>
    id === 'thermistorServo' ? at(timeS) : id.startsWith('thermistor') ? airC : 0;
  const fast = ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'] as const;
  const samples = syntheticRun({ tap, feedOnS: 1, endS: startS + runS + 0.5, fast });
  const evidence = { raceS, working: { fromS: startS, toS: startS + runS }, stoppedHot: false };
  const findings = analyse({ evidence, samples, rig: testRig(), car: marmot });
  return Object.fromEntries(findings.map((finding) => [finding.id, finding]));
}
/** From the trace and the determinant of the two bodies' matrix. */
function slowOf({
  windingJPerK: c1,
  windingToCaseKPerW: r1,
  caseJPerK: c2,
  caseToAirKPerW: r2,
}: ServoParameters): number {
  const trace = 1 / (r1 * c1) + 1 / (r1 * c2) + 1 / (r2 * c2);
  return 1 / (trace / 2 - Math.sqrt(trace ** 2 / 4 - 1 / (r1 * c1 * r2 * c2)));
}
const value = (finding: Finding): Measured => {
  expect(finding.measured, JSON.stringify(finding)).toBe(true);
  return finding as Measured;
};
const reason = (finding: Finding): string =>
  finding.measured ? `measured ${finding.value}` : finding.reason;
const raceS = 300;

describe('servo-heat analysis refuses', () => {
  const short = courseOf(1, 2, 60);
  it('a flag beyond three times the run, and says how long to run', () =>
    expect(reason(found(courseOf(1, 2, 130), 120, raceS)['flag-temperature'])).toMatch(
      /5 min let it work for \d+ s/,
    ));
  it('a run that hardly began', () =>
    expect(reason(found(short, 40, 60)['heat-time-constant'])).toMatch(/longer/));
  it('a case that stays cold', () =>
    expect(reason(found(courseOf(1, 0.05, 110), 100, raceS)['heat-time-constant'])).toMatch(/rose by only/));
});
describe.each([1, 2])('servo-heat analysis of the servo of seed %i', (seed) => {
  const course = courseOf(seed, 2, raceS + 10);
  const told = found(course, 180, raceS);
  it.each([
    ['case-temperature', 176],
    ['flag-temperature', raceS],
  ])('has its %s in the interval', (id, atS) => {
    const [low, high] = value(told[id]).interval;
    const truth = course.caseC[Math.round(atS / stepS)];
    expect(low).toBeLessThan(truth);
    expect(high).toBeGreaterThan(truth);
    expect(high - low).toBeLessThan(12);
    expect(judge(told[id], limits(marmot)[id]).verdict).toBe('pass');
  });
  it('tells the time constant of the slow one of its two bodies', () => {
    const { servo } = drawParameters(seed);
    const slowS = slowOf(servo);
    const { interval } = value(told['heat-time-constant']);
    expect(interval[0]).toBeLessThan(slowS);
    expect(interval[1]).toBeGreaterThan(slowS);
  });
});
describe('the verdict', () => {
  const limit = limits(marmot)['flag-temperature'];
  const flagOf = (watts: number) => found(courseOf(2, watts, raceS), 170, raceS)['flag-temperature'];
  it('fails a servo that will be too hot at the flag', () =>
    expect(judge(flagOf(7), limit).verdict).toBe('fail'));
});
