// SPDX-License-Identifier: MIT
// A made-up steering with known stops: a servo that moves draws a little, one kept from its place by its square.
// The analysis must give width, degrees and per cent back, and refuse what met no stop.
import { describe, expect, it } from 'vitest';
import type { Finding, Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { marmot, syntheticRun } from '../synthetic-run-fixture.ts';
import { analyse, results } from './analysis.ts';
import { outwardOf, sides, type Evidence, type Search, type Side } from './evidence.ts';

const stops = { short: 310, long: 290 };
const radio = { leftUs: 1920, centreUs: 1496, rightUs: 1100 };
const rootApUs = 0.026;
const idleA = 0.012;
const movingA = 0.022;
const everyS = 0.024;

/** From the centre in steps of 5 us, as far as the search goes before it sees the stop. */
const widthsOf = (side: Side): number[] =>
  Array.from({ length: Math.ceil((stops[side] + 12 - 32) / 5) }, (_, k) => 32 + 5 * k);
const walks = sides.flatMap((side) => widthsOf(side).map((outUs) => ({ side, outUs })));
const startS = (k: number) => 2 + everyS * k;
const standing = { fromS: 1.2, toS: 1.8 };
function searchOf(side: Side): Search {
  const first = walks.findIndex((step) => step.side === side);
  const steps = widthsOf(side).map((outUs, k) => ({
    widthUs: 1500 + outwardOf(side) * outUs,
    stretch: { fromS: startS(first + k), toS: startS(first + k) + everyS },
  }));
  return { side, hitch: 'wheels off', still: standing, steps, met: true };
}
const holds = sides.map((side, k) => ({
  side,
  widthUs: 1500,
  stretch: { fromS: startS(walks.length + 12 * k), toS: startS(walks.length + 12 * k + 12) },
}));
const evidence: Evidence = { searches: sides.map(searchOf), holds, radio };

function currentAt(timeS: number): number {
  const step = walks[Math.floor((timeS - 2) / everyS + 1e-9)];
  if (timeS < 2 || !step) return timeS > 1 ? idleA : 0;
  return idleA + Math.max(movingA, (rootApUs * Math.max(0, step.outUs - stops[step.side])) ** 2);
}
const samples = syntheticRun({
  tap: (id, timeS) => (id === 'railCurrent' ? currentAt(timeS) : id === 'railVoltage' && timeS > 1 ? 6 : 0),
  feedOnS: 1,
  endS: startS(walks.length + 26),
  fast: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
});
const found = (kept: Evidence = evidence): Record<string, Finding> => {
  const findings = analyse({ evidence: kept, samples, rig: testRig(), car: marmot });
  expect(findings.map(({ id }) => id)).toEqual(results.map(({ id }) => id));
  return Object.fromEntries(findings.map((finding) => [finding.id, finding]));
};
const value = (finding: Finding): Measured => {
  expect(finding.measured, JSON.stringify(finding)).toBe(true);
  return finding as Measured;
};
const reason = (finding: Finding): string =>
  finding.measured ? `measured ${finding.value}` : finding.reason;

describe('servo-end-points analysis refuses', () => {
  it('a side that met nothing, and says what to look at', () => {
    const free = { ...evidence.searches[0], met: false };
    const told = found({ ...evidence, searches: [free, evidence.searches[1]] });
    expect(reason(told['end-point-right'])).toMatch(/No stop was met within 3\d\d µs.*horn slips/);
    expect(reason(told['travel-asymmetry'])).toMatch(/No stop was met/);
    expect(told['end-point-left'].measured).toBe(true);
  });
  it('a servo whose current swings, and does not blame the horn', () => {
    const restless = syntheticRun({
      tap: (id, timeS) => (id === 'railCurrent' ? 0.1 + 0.1 * Math.sign(Math.sin(timeS * 31)) : 0),
      feedOnS: 1,
      endS: startS(walks.length + 26),
      fast: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
    });
    const free = { ...evidence.searches[0], met: false };
    const kept = { ...evidence, searches: [free, evidence.searches[1]] };
    const findings = analyse({ evidence: kept, samples: restless, rig: testRig(), car: marmot });
    expect(reason(findings[1])).toMatch(/hunts/);
  });
  it('a run that ended before a side', () =>
    expect(reason(found({ ...evidence, searches: [] })['end-point-left'])).toMatch(/ended before/));
  it('per cent without the pulses of the radio, not the widths', () => {
    const told = found({ ...evidence, radio: null });
    expect(reason(told['setting-left'])).toMatch(/Run "Radio: ranges at the receiver"/);
    expect(told['end-point-left'].measured).toBe(true);
  });
  it('pulses of the radio that cannot be', () =>
    expect(reason(found({ ...evidence, radio: { ...radio, rightUs: 1900 } })['setting-right'])).toMatch(
      /either side of the centre/,
    ));
});
describe('servo-end-points analysis', () => {
  const told = found();
  it('finds both stops, left where the radio has its left', () => {
    expect(Math.abs(value(told['end-point-left']).value - 1790)).toBeLessThan(2.5);
    expect(Math.abs(value(told['end-point-right']).value - 1190)).toBeLessThan(2.5);
  });
  it('tells the degrees from neutral', () => {
    expect(Math.abs(value(told['travel-left']).value - 29)).toBeLessThan(0.3);
    expect(Math.abs(value(told['travel-right']).value - 31)).toBeLessThan(0.3);
  });
  it("tells the radio's own per cent about its own centre, and proposes less", () => {
    expect(Math.abs(value(told['setting-left']).value - (100 * 294) / 424)).toBeLessThan(0.8);
    expect(Math.abs(value(told['setting-right']).value - (100 * 306) / 396)).toBeLessThan(0.8);
    expect(value(told['setting-left']).notes).toEqual([
      expect.stringMatching(/^Set left to 65 %: \d\.\d degrees/),
    ]);
  });
  it('tells how far left and right are apart, within its interval', () => {
    const { interval } = value(told['travel-asymmetry']);
    expect(interval[0]).toBeLessThan((100 * 20) / 310);
    expect(interval[1]).toBeGreaterThan((100 * 20) / 310);
  });
  it('tells the holding currents, and which look an end point came from', () => {
    expect(Math.abs(value(told['hold-left']).value - idleA)).toBeLessThan(0.004);
    expect(value(told['end-point-left']).formula).toContain('wheels off');
  });
});
