// SPDX-License-Identifier: MIT
// Star windings of known ohms in a made-up run: pairs, mean and spread must come back at 20 C, by the factor that
// IEC 60034-1 gives copper; the odd winding must be named; and what went wrong must be told.
import { describe, expect, it } from 'vitest';
import { judgeAll } from '#core/verdicts/judge';
import type { Finding, Measured } from '#core/measurements/measurement';
import { byStep, probeRig, stepAt, stepRun, type Steps } from '../four-wire-fixture.ts';
import { withProposal } from '../proposal.ts';
import { marmot } from '../synthetic-run-fixture.ts';
import { analyse, results } from './analysis.ts';
import { pairs, type Evidence } from './evidence.ts';
import { limits } from './limits.ts';
import { proposes } from './measured-winding.ts';

const airC = 28;
/** (235 + t)/(235 + 20): resistance of copper over temperature after IEC 60034-1 (from memory). */
const warm = (235 + airC) / (235 + 20);
const phase = 6.8e-3;
const evidence: Evidence = {
  steps: pairs.map((pair, k) => ({ pair, step: stepAt(k, 'jointProbeWide') })),
};
/** Pairs AB, BC, CA of three star windings, as multiples of one. */
const pairsOf = (a: number, b: number, c: number) => [a + b, b + c, c + a].map((sum) => sum * phase);
function run(windings: readonly [number, number, number], change: Partial<Steps> = {}) {
  const ohm = byStep(...pairsOf(...windings).map((r) => r * warm));
  return stepRun({ tap: 'jointProbeWide', ohm, airC, count: 3, ...change });
}
const found = (samples = run([1, 1, 1]), kept = evidence) =>
  analyse({ evidence: kept, samples, rig: probeRig(), car: marmot });
const byId = (findings: readonly Finding[], id: string) => findings.find((f) => f.id === id) as Measured;
const reasons = (...of: Parameters<typeof found>) =>
  found(...of).map((f) => (f.measured ? 'measured' : f.reason));
const verdicts = (findings: readonly Finding[]) =>
  judgeAll(findings, limits(marmot)).map(({ verdict }) => verdict);
function covers(findings: readonly Finding[], id: string, value: number): void {
  const { interval } = byId(findings, id);
  expect(interval[0], id).toBeLessThanOrEqual(value);
  expect(interval[1], id).toBeGreaterThanOrEqual(value);
}

describe('winding-balance says why nothing was measured', () => {
  const all = (text: RegExp) => results.map(() => expect.stringMatching(text));
  it('a run that ended early', () =>
    expect(reasons(undefined, { steps: evidence.steps.slice(0, 2) })).toEqual(
      all(/phases C and A were measured/),
    ));
  it('a motor still warm from a run', () =>
    expect(reasons(run([1, 1, 1], { canC: 45 }))).toEqual(all(/K off the air.*Let it rest/)));
  it('a jumper at the other setting', () =>
    expect(reasons(run([1, 1, 1], { besidesV: 0.4 }))).toEqual(all(/jumper is not at x5/)));
  it('clips that touch nothing', () =>
    expect(reasons(run([1, 1, 1], { amps: 0.05 }))).toEqual(all(/Only 0\.0 A flowed/)));
});
describe('winding-balance', () => {
  it('gives three like pairs back at 20 C and passes them', () => {
    const findings = found();
    expect(findings.map(({ id }) => id)).toEqual(results.map(({ id }) => id));
    for (const id of ['winding-ab', 'winding-bc', 'winding-ca', 'winding-mean'])
      covers(findings, id, 2 * phase);
    covers(findings, 'winding-spread', 0);
    expect(verdicts(findings)).toEqual(results.map(() => 'pass'));
    expect(byId(findings, 'winding-spread').notes).toEqual([]);
  });
  it('knows the spread far better than the ohms, as gain and temperature fall out', () => {
    const findings = found();
    const share = (id: string) => byId(findings, id).u / (2 * phase);
    expect(byId(findings, 'winding-spread').u / 100).toBeLessThan(0.4 * share('winding-mean'));
    expect(share('winding-mean')).toBeLessThan(0.02);
  });
  it('finds that one winding off by 10 % makes the pairs differ by 5 %', () => {
    const findings = found(run([1, 1.1, 1]));
    covers(findings, 'winding-spread', (100 * 0.1) / (2 + 0.2 / 3));
    expect(byId(findings, 'winding-spread').value).toBeCloseTo(4.84, 0);
  });
  it.each([
    ['A', [1.2, 1, 1]],
    ['B', [1, 1.2, 1]],
    ['C', [1, 1, 1.2]],
  ] as const)('fails winding %s with a fifth too much, and names it', (name, windings) => {
    const findings = found(run(windings));
    expect(verdicts(findings).at(-1)).toBe('fail');
    expect(byId(findings, 'winding-spread').notes[0]).toContain(`leaves out: ${name}.`);
  });
  it('fails a motor that has far less than its turns would give', () => {
    const shorted = found(run([0.6, 0.6, 0.6]));
    expect(verdicts(shorted)[3]).toBe('fail');
  });
});
describe('the measured winding', () => {
  it('goes into the motor as a proposal, with its uncertainty', () => {
    const findings = found();
    const proposal = proposes(findings)!;
    expect(proposal.words).toMatch(/Take 13\.\d\d mΩ at 20 °C/);
    const { windingOhm } = withProposal(marmot, proposal).motor;
    expect(windingOhm!.ohm).toBeCloseTo(2 * phase, 4);
    expect(windingOhm!.u).toBeCloseTo(byId(findings, 'winding-mean').u, 6);
  });
  it('is none where nothing was measured', () =>
    expect(proposes(found(undefined, { steps: [] }))).toBeNull());
});
