// SPDX-License-Identifier: MIT
// Conformance probabilities of JCGM 106:2012 (figures from memory, recomputed), and the rule built on them.
import { describe, expect, it } from 'vitest';
import type { Finding, Measured } from '../measurements/measurement.ts';
import { chanceOut } from './chance-out.ts';
import { judge, overallVerdict } from './judge.ts';
import type { Limit } from './limit.ts';

function found(value: number, u: number, change: Partial<Measured> = {}): Measured {
  const budget = [
    { source: 'all', u, shape: 'normal', dof: Number.POSITIVE_INFINITY, origin: 'example' },
  ] as const;
  const half = 1.96 * u;
  return {
    measured: true,
    id: 'x',
    title: 'x',
    unit: 'V',
    value,
    u,
    interval: [value - half, value + half],
    budget,
    evidence: [],
    formula: '',
    notes: [],
    ...change,
  };
}
const limit = (bounds: Partial<Limit>): Limit => ({
  unit: 'V',
  kind: 'published',
  source: 'example',
  ...bounds,
});

describe('a count, known without error', () => {
  const count = (value: number) => found(value, 0, { budget: [] });
  it('is within a limit that it stands at, on both sides', () =>
    expect(judge(count(1), limit({ min: 1, max: 1 })).verdict).toBe('pass'));
  it.each([0, 2])('%d is out of 1 to 1', (value) =>
    expect(judge(count(value), limit({ min: 1, max: 1 })).verdict).toBe('fail'),
  );
});
describe('chanceOut', () => {
  it.each([
    ['upper limit -5.40, -5.47 +- 0.05', found(-5.47, 0.05), limit({ max: -5.4 }), 0.919243],
    ['lower limit 490, 509.7 +- 8.6', found(509.7, 8.6), limit({ min: 490 }), 0.98901],
    ['limits 12.5 to 16.3, 13.6 +- 1.8', found(13.6, 1.8), limit({ min: 12.5, max: 16.3 }), 0.66263],
  ])('agrees with the conformance probability: %s', (_name, finding, bounds, conforming) =>
    expect(Math.abs(1 - chanceOut(finding, bounds) - conforming)).toBeLessThan(5e-4),
  );
});
describe('judge', () => {
  const max = limit({ max: 10 });
  it.each([
    ['pass', 10 - 1.97 * 0.1],
    ['undecided', 10 - 1.94 * 0.1],
    ['undecided', 10],
    ['undecided', 10 + 1.94 * 0.1],
    ['fail', 10 + 1.97 * 0.1],
  ])('says %s at %f for a limit of 10 and u = 0.1', (verdict, value) =>
    expect(judge(found(value, 0.1), max).verdict).toBe(verdict),
  );
  it('shares the risk between two limits that are near each other', () =>
    expect(judge(found(10, 0.1), limit({ min: 9.79, max: 10.21 })).verdict).toBe('undecided'));
  it.each([Number.NaN, Number.POSITIVE_INFINITY])('never passes a value of %f', (value) =>
    expect(judge(found(value, 0.1), max).verdict).toBe('not measured'),
  );
  it('never passes an unknown uncertainty', () =>
    expect(judge(found(1, Number.NaN), max).verdict).toBe('not measured'));
  it('says not measured for what was not measured, with or without a limit', () => {
    const none: Finding = { measured: false, id: 'x', title: 'x', unit: 'V', reason: 'a gap' };
    expect(judge(none, max).verdict).toBe('not measured');
    expect(judge(none).verdict).toBe('not measured');
  });
  it('passes with a note beyond the watch level', () => {
    const judged = judge(found(9, 0.1), limit({ max: 10, warnMax: 8.5 }));
    expect(judged).toMatchObject({ verdict: 'pass', note: 'Watch it: above 8.5 V.' });
  });
  it('tells how many repeats would settle a scatter, and what rules the doubt', () => {
    const budget = [
      { source: 'noise', u: 0.1, shape: 'student', dof: 30, origin: 'run' },
      {
        source: 'gain of railVoltage',
        u: 0.03,
        shape: 'rectangular',
        dof: Number.POSITIVE_INFINITY,
        origin: 'rig',
      },
    ] as const;
    // Room for scatter at 0.15 from the limit: (0.15/1.96)^2 - 0.03^2 = 0.0704^2, so 0.1^2/0.0704^2 = 2.02, three runs.
    const note = judge(found(9.85, Math.hypot(0.1, 0.03), { budget }), max).note;
    expect(note).toContain('3 runs averaged would settle it');
    expect(note).toContain('Noise makes 92 % of the doubt');
  });
  it('names the calibration where one gain rules', () => {
    const budget = [
      {
        source: 'gain of railVoltage',
        u: 0.1,
        shape: 'rectangular',
        dof: Number.POSITIVE_INFINITY,
        origin: 'rig',
      },
    ] as const;
    const after = { value: 9.9, budget: [{ ...budget[0], u: 0.05 }] };
    const withCalibrated = (tap: string, id: string) =>
      tap === 'railVoltage' && id === found(9.9, 0.1).id ? after : undefined;
    expect(judge(found(9.9, 0.1, { budget }), max, { withCalibrated }).note).toContain(
      'Calibrating railVoltage would bring it to about 0.082 V, which would settle it',
    );
    expect(judge(found(9.9, 0.1, { budget }), max).note).not.toContain('Calibrating');
  });
});
describe('overallVerdict', () => {
  it.each([
    ['fail', ['pass', 'not measured', 'fail', 'undecided']],
    ['not measured', ['pass', 'undecided', 'not measured']],
    ['undecided', ['pass', 'undecided']],
    ['pass', ['pass', 'pass']],
    ['not measured', []],
  ] as const)('is %s for %j', (whole, parts) =>
    expect(overallVerdict(parts.map((verdict) => ({ verdict })))).toBe(whole),
  );
});
