// SPDX-License-Identifier: MIT
// A rail of known source resistance under the load bank in a made-up run; the analysis must give resistance, drop,
// dip and recovery back. Bursts are made sample by sample.
import { describe, expect, it } from 'vitest';
import type { Finding, Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { judgeAll } from '#core/verdicts/judge';
import { gaussian, marmot, syntheticRun, type Signals } from '../synthetic-run-fixture.ts';
import { analyse, results } from './analysis.ts';
import type { Evidence } from './evidence.ts';
import type { KeptBurst } from '../burst-wave.ts';
import { limits } from './limits.ts';

const openV = 6.02;
const loadsOhm = [10, 4.7, 2.2];
const conductance = (mask: number) => loadsOhm.reduce((sum, ohm, bit) => sum + ((mask >> bit) & 1) / ohm, 0);
const masks = [1, 2, 3, 4, 5, 6, 7, 1, 2, 3, 4, 5, 6, 7];
const startS = (k: number) => 3 + 0.5 * k;
const steps = masks.map((mask, k) => ({
  mask,
  loaded: { fromS: startS(k) + 0.04, toS: startS(k) + 0.2 },
  free: { fromS: startS(k) + 0.3, toS: startS(k) + 0.44 },
}));
function maskAt(timeS: number): number {
  const k = Math.floor((timeS - 3) / 0.5);
  return k >= 0 && k < masks.length && timeS - startS(k) < 0.24 ? masks[k] : 0;
}
type Rail = (siemens: number) => { v: number; i: number };
const source =
  (ohm: number): Rail =>
  (g) => ({ v: openV / (1 + ohm * g), i: (openV * g) / (1 + ohm * g) });
/** Constant current above a limit. */
const limited =
  (ohm: number, limitA: number): Rail =>
  (g) =>
    source(ohm)(g).i <= limitA ? source(ohm)(g) : { v: limitA / g, i: limitA };

function run(rail: Rail, packV = 8, lost?: Signals['lost']) {
  const tap: Signals['tap'] = (id, timeS) => {
    if (id.startsWith('thermistor')) return 25;
    if (timeS < 1) return 0;
    const { v, i } = rail(conductance(maskAt(timeS)));
    return id === 'railVoltage' ? v : id === 'railCurrent' ? i : id === 'controllerVoltage' ? packV : 0;
  };
  return syntheticRun({
    tap,
    feedOnS: 1,
    endS: 11,
    fast: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
    lost,
  });
}
const step = 96;
/** A dip of `depthV` that decays with `tauS`, onto a settled drop; the supply of the made-up rig is 4.9 V. */
function burst(depthV: number, tauS: number, dropV: number, seed: number): KeptBurst {
  const next = gaussian(seed);
  const codes = Array.from({ length: 624 }, (_, k) => {
    // The step comes 143 us after sample `step` was held.
    const sinceS = (k - step) * 104e-6 - 143e-6;
    const volts = sinceS < 0 || sinceS > 0.04 ? openV : openV - dropV - depthV * Math.exp(-sinceS / tauS);
    return Math.round((volts / 2 / 4.9) * 1024 + 0.6 * next());
  });
  return { tap: 'railVoltage', startS: 10, intervalS: 104e-6, actionSample: step, codes };
}
const evidence: Evidence = {
  rest: { fromS: 2, toS: 2.8 },
  steps,
  loadBursts: [1, 2, 3].map((seed) => burst(0.6, 0.5e-3, 0.15, seed)),
  servoBursts: [burst(0.2, 1e-3, 0.1, 9)],
};
const analysed = (rail: Rail, kept: Partial<Evidence> = {}, packV = 8, lost?: Signals['lost']) =>
  analyse({
    evidence: { ...evidence, ...kept },
    samples: run(rail, packV, lost),
    rig: testRig(),
    car: marmot,
  });
const find = (findings: readonly Finding[], id: string) =>
  findings.find((finding) => finding.id === id) as Measured;
const verdictOf = (findings: readonly Finding[], id: string) =>
  judgeAll(findings, limits(marmot)).find((judged) => judged.id === id)?.verdict;

describe('rail-sag analysis', () => {
  const findings = analysed(source(0.035));
  it('lists every result once', () =>
    expect(findings.map(({ id }) => id)).toEqual(results.map(({ id }) => id)));
  it('gives 35 mohm back, known to 10 % at most', () => {
    const found = find(findings, 'source-resistance');
    expect(Math.abs(found.value - 0.035)).toBeLessThan(0.0006);
    expect((found.interval[1] - found.value) / found.value).toBeLessThan(0.1);
  });
  it('gives the steady drop of the greatest load back', () => {
    const truth = openV - source(0.035)(conductance(7)).v;
    expect(Math.abs(find(findings, 'steady-drop').value - truth)).toBeLessThan(0.003);
  });
  it('gives the deepest dip back within its interval', () => {
    const { interval } = find(findings, 'deepest-dip');
    const lowestV = openV - 0.15 - 0.6;
    expect(interval[0]).toBeLessThan(lowestV);
    expect(interval[1]).toBeGreaterThan(lowestV);
  });
  it('passes this rail', () =>
    expect(['source-resistance', 'steady-drop', 'deepest-dip'].map((id) => verdictOf(findings, id))).toEqual([
      'pass',
      'pass',
      'pass',
    ]));
  it('fails a soft rail of 140 mohm by its resistance and its drop', () => {
    const soft = analysed(source(0.14));
    expect(verdictOf(soft, 'source-resistance')).toBe('fail');
    expect(verdictOf(soft, 'steady-drop')).toBe('fail');
  });
  it('fails a rail whose regulator gives up, by its drop, and calls it no resistance', () => {
    const weak = analysed(limited(0.035, 1.5));
    expect(verdictOf(weak, 'steady-drop')).toBe('fail');
    const first = weak[0];
    expect(first.measured ? '' : first.reason).toMatch(/limits the current/);
  });
});
describe('rail-sag analysis refuses', () => {
  const words = (findings: readonly Finding[], id: string) => {
    const finding = findings.find((one) => one.id === id)!;
    return finding.measured ? 'measured' : finding.reason;
  };
  it('a pack without head-room above the setting, for every result', () => {
    for (const { id } of results) expect(words(analysed(source(0.035), {}, 6.3), id)).toMatch(/pack/i);
  });
  it('a lost block in a load step, for the line only as far as it hangs on it', () =>
    expect(
      words(
        analysed(source(0.035), {}, 8, (t) => t > 3.1 && t < 3.12),
        'source-resistance',
      ),
    ).toMatch(/lost/));
  it('a burst with a part lost', () => {
    const torn = {
      ...evidence.loadBursts[0],
      codes: evidence.loadBursts[0].codes.map((code, k) => (k === 120 ? null : code)),
    };
    expect(words(analysed(source(0.035), { loadBursts: [torn] }), 'deepest-dip')).toMatch(/lost/);
  });
  it('a burst whose step never fired', () => {
    const still = { ...evidence.loadBursts[0], actionSample: null };
    expect(words(analysed(source(0.035), { loadBursts: [still] }), 'recovery')).toMatch(/never told/);
  });
  it('a run that never reached all loads', () =>
    expect(words(analysed(source(0.035), { steps: steps.slice(0, 6) }), 'steady-drop')).toMatch(
      /not reached/,
    ));
});
