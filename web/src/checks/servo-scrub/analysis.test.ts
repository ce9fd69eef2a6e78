// SPDX-License-Identifier: MIT
// Made-up moves on the tyres with bursts of known current and rail; the analysis must give them back, and say in words
// what it could not measure.
import { describe, expect, it } from 'vitest';
import type { Finding, Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { judgeAll } from '#core/verdicts/judge';
import type { Car } from '#core/parts/part';
import { encoder, marmot, syntheticRun } from '../synthetic-run-fixture.ts';
import { analyse, results } from './analysis.ts';
import type { Evidence, Move } from './evidence.ts';
import { limits } from './limits.ts';

const rig = testRig();
const intervalS = 104e-6;
const encode = encoder(rig);
const workA = 0.6;
const holdA = 0.08;
const lowestV = 5.31;
const lengthS = 0.12;
const tapOf = (id: string) => rig.descriptor.taps.find((tap) => tap.id === id)!;

/** 15 ms after the marked sample the servo moves. */
function valueAt(tap: string, k: number, work: number): number {
  const sinceS = (k - 96) * intervalS - 0.015;
  const moving = sinceS >= 0 && sinceS < lengthS;
  if (tap === 'railVoltage') return sinceS > 0 && sinceS < 0.004 ? lowestV : 5.9;
  return moving ? work + 1.5 * Math.exp(-sinceS / 0.004) : sinceS < 0 ? 0.01 : holdA;
}
function moveOf(index: number, work: number): Move {
  const tap = index % 4 < 2 ? 'railCurrent' : 'railVoltage';
  const codes = Array.from({ length: 5000 }, (_, k) => encode(tapOf(tap), valueAt(tap, k, work)));
  const startS = 2 + index;
  const [fromUs, toUs] = index % 2 === 0 ? [1200, 1800] : [1800, 1200];
  const burst = { tap, startS, intervalS, actionSample: 96, codes };
  return { fromUs, toUs, burst, rest: { fromS: startS + 0.6, toS: startS + 0.9 } };
}
const evidenceOf = (work = workA): Evidence => ({
  moves: Array.from({ length: 10 }, (_, k) => moveOf(k, work)),
});
const samples = syntheticRun({
  tap: (id, timeS) => (timeS < 1 ? 0 : id === 'railCurrent' ? holdA : id === 'railVoltage' ? 5.9 : 0),
  feedOnS: 1,
  endS: 13,
  fast: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
});
const found = (evidence: Evidence = evidenceOf(), car: Car = marmot): Record<string, Finding> => {
  const findings = analyse({ evidence, samples, rig, car });
  expect(findings.map(({ id }) => id)).toEqual(results.map(({ id }) => id));
  return Object.fromEntries(findings.map((finding) => [finding.id, finding]));
};
const value = (finding: Finding): Measured => {
  expect(finding.measured, JSON.stringify(finding)).toBe(true);
  return finding as Measured;
};
const reason = (finding: Finding): string =>
  finding.measured ? `measured ${finding.value}` : finding.reason;

describe('servo-scrub analysis refuses', () => {
  it('a run without moves, each result in its own words', () => {
    const told = found({ moves: [] });
    expect(reason(told['scrub-current'])).toMatch(/Fewer than two moves/);
    expect(reason(told['scrub-dip'])).toMatch(/No move was heard on the rail/);
    expect(reason(told['scrub-hold'])).toMatch(/before the first move/);
  });
  it('the share without a stall current on the label', () => {
    const car = { ...marmot, servo: { ...marmot.servo, ratedStallA: undefined } };
    expect(reason(found(evidenceOf(), car)['scrub-share'])).toMatch(/no stall current entered/);
  });
  it('a burst with a part lost', () => {
    const { moves } = evidenceOf();
    const torn = {
      ...moves[0],
      burst: { ...moves[0].burst, codes: [null, ...moves[0].burst.codes.slice(1)] },
    };
    expect(reason(found({ moves: [torn, ...moves.slice(1)] })['scrub-time'])).toMatch(
      /part of a burst was lost/,
    );
  });
});
describe('servo-scrub analysis', () => {
  const told = found();
  it('finds currents, time and dip within their intervals', () => {
    const wanted = {
      'scrub-current': workA,
      'scrub-hold': holdA,
      'scrub-time': lengthS,
      'scrub-dip': lowestV,
    };
    for (const [id, truth] of Object.entries(wanted)) {
      const [low, high] = value(told[id]).interval;
      expect(low, id).toBeLessThan(truth);
      expect(high, id).toBeGreaterThan(truth);
    }
  });
  it('sets the current against the stall current of the label', () =>
    expect(value(told['scrub-share']).value).toBeCloseTo((100 * value(told['scrub-current']).value) / 3, 9));
  it('passes that, and fails a servo that needs half of its stall current', () => {
    const verdictOf = (work: number) =>
      judgeAll(Object.values(found(evidenceOf(work))), limits(marmot)).find(({ id }) => id === 'scrub-share')
        ?.verdict;
    expect(verdictOf(workA)).toBe('pass');
    expect(verdictOf(1.6)).toBe('fail');
  });
});
