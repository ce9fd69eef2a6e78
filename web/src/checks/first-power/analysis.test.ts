// SPDX-License-Identifier: MIT
// Capacitors charged by the closed form in a made-up run: the analysis must give C, leak and standby back, and must tell
// a short, something the wrong way round, a missing capacitor, a leak and a reversed pack apart in words.
import { describe, expect, it } from 'vitest';
import type { Finding, Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { judgeAll } from '#core/verdicts/judge';
import { marmot, syntheticRun } from '../synthetic-run-fixture.ts';
import { analyse, results } from './analysis.ts';
import type { Evidence } from './evidence.ts';
import { limits } from './limits.ts';

const packV = 8.2;
const feedOhm = 10.04;
const closedS = 3.01;
const evidence: Evidence = {
  rest: { fromS: 0.2, toS: 0.8 },
  empty: { fromS: 2.7, toS: 2.9 },
  emptied: true,
  charge: { fromS: 2.99, toS: 3.25 },
  filled: { fromS: 3.19, toS: 3.25 },
  standby: { fromS: 4, toS: 5 },
};
interface Met {
  readonly farad?: number;
  /** Where the controller side stays. */
  readonly heldV?: number;
  readonly leakA?: number;
  readonly polarityV?: number;
  /** A controller that boots in spite of its switch takes so much above 4.5 V. */
  readonly bootA?: number;
}
function analysed(
  met: Met,
  kept: Partial<Evidence> = {},
  lost?: (timeS: number) => boolean,
  rig = testRig(),
) {
  const { farad = 1.5e-3, leakA = 0, polarityV = packV, bootA = 0 } = met;
  const finalV = Math.min(met.heldV ?? packV - 0.3, packV - 0.3 - 10 * leakA);
  const tauS = feedOhm * farad;
  const side = (t: number) => {
    if (t < closedS) return 0;
    const plain = met.heldV ?? (packV - 0.3) * (1 - Math.exp((closedS - t) / tauS));
    return plain > 4.5 ? Math.min(plain - feedOhm * bootA, finalV) : plain;
  };
  const tap = (id: string, t: number) => {
    if (id === 'controllerVoltage') return side(t);
    if (id === 'packVoltage') return Math.max(0, polarityV);
    if (id === 'polarity') return polarityV;
    if (id === 'packCurrentNarrow') return t < closedS ? 0 : t < 3.5 ? leakA : 0.14;
    return undefined;
  };
  const samples = syntheticRun({
    tap,
    feedOnS: 3,
    endS: 5.2,
    fast: ['controllerVoltage', 'packVoltage', 'controllerVoltage', 'packCurrentNarrow'],
    lost,
  });
  return analyse({ evidence: { ...evidence, ...kept }, samples, rig, car: marmot });
}
const find = (findings: readonly Finding[], id: string) => findings.find((one) => one.id === id)!;
const verdictOf = (findings: readonly Finding[], id: string) =>
  judgeAll(findings, limits(marmot)).find((judged) => judged.id === id)?.verdict;
const wordsOf = (findings: readonly Finding[], id: string): string => {
  const finding = find(findings, id);
  return finding.measured ? finding.notes.join(' ') : finding.reason;
};
const opened = { standby: null };

describe('first-power analysis tells apart', () => {
  it.each<[string, Met, RegExp]>([
    ['a short', { heldV: 0.04 }, /A short/],
    ['something the wrong way round', { heldV: 1.4 }, /wrong way round/],
    ['a half short', { heldV: 0.5 }, /draws current/],
    ['a strong leak', { leakA: 0.2 }, /draws current/],
  ])('%s: the feed did not fill, and nothing that hangs on it is told', (_, met, words) => {
    const findings = analysed({ ...met, leakA: met.leakA ?? 0.7 }, opened);
    expect(verdictOf(findings, 'charge-reached')).toBe('fail');
    expect(wordsOf(findings, 'charge-reached')).toMatch(words);
    expect(verdictOf(findings, 'leak-current')).toBe('fail');
    for (const id of ['capacitance', 'standby-current']) expect(wordsOf(findings, id)).toMatch(words);
  });
  it('a missing capacitor: full at once', () => {
    const findings = analysed({ farad: 20e-6 });
    expect(verdictOf(findings, 'charge-reached')).toBe('pass');
    expect(verdictOf(findings, 'capacitance')).toBe('fail');
    expect(wordsOf(findings, 'capacitance')).toMatch(/no capacitor/);
  });
  it('a reversed pack: no path was closed', () => {
    const findings = analysed({ polarityV: -8 }, { empty: null, charge: null, filled: null, standby: null });
    expect(verdictOf(findings, 'feed-polarity')).toBe('fail');
    for (const { id } of results.slice(1)) expect(wordsOf(findings, id)).toMatch(/no path was closed/);
  });
  it('a controller side that something else feeds', () => {
    const kept = { emptied: false, empty: null, charge: null, filled: null, standby: null };
    expect(wordsOf(analysed({}, kept), 'capacitance')).toMatch(/would not fall below 0.2 V/);
  });
  it('a leak that fills too little for the full feed from one that does not matter', () => {
    const findings = analysed({ leakA: 0.03 }, opened);
    expect(verdictOf(findings, 'leak-current')).toBe('pass');
    expect(wordsOf(findings, 'standby-current')).toMatch(/95 %/);
  });
  it('a charge with a lost block from a whole one', () =>
    expect(
      wordsOf(
        analysed({}, {}, (t) => t > 3 && t < 3.02),
        'capacitance',
      ),
    ).toMatch(/lost/));
});
describe('first-power analysis', () => {
  it.each([0.6e-3, 1.5e-3, 3e-3])('gives %d F back within 10 %, truth inside', (farad) => {
    const found = find(analysed({ farad }), 'capacitance') as Measured;
    expect(Math.abs(found.value / farad - 1)).toBeLessThan(0.02);
    expect(found.interval[0]).toBeLessThan(farad);
    expect(found.interval[1]).toBeGreaterThan(farad);
    expect((found.interval[1] - found.value) / found.value).toBeLessThan(0.1);
  });
  it('is not led astray by a controller that boots above 4.5 V', () => {
    const found = find(analysed({ farad: 1.5e-3, bootA: 0.03 }), 'capacitance') as Measured;
    expect(Math.abs(found.value / 1.5e-3 - 1)).toBeLessThan(0.02);
  });
  it('knows C better with a calibrated limited feed', () => {
    const line = { tap: 'limitedFeed', gain: 1, offset: 0, gainU: 0.006, offsetU: 0, correlation: 0 };
    const kept = { calibration: [{ ...line, date: '2026-11-20', origin: 'meter' }] };
    const uOf = (findings: readonly Finding[]) => (find(findings, 'capacitance') as Measured).u;
    expect(uOf(analysed({}, {}, undefined, testRig(kept)))).toBeLessThan(0.65 * uOf(analysed({})));
  });
  it('gives standby and leak back', () => {
    const findings = analysed({});
    expect((find(findings, 'standby-current') as Measured).value).toBeCloseTo(0.14, 2);
    expect((find(findings, 'leak-current') as Measured).value).toBeCloseTo(0, 2);
    expect(results.map(({ id }) => verdictOf(findings, id))).toEqual(Array(5).fill('pass'));
  });
  it('holds the capacitor against its label where there is one', () => {
    const labelled = { ...marmot, controller: { ...marmot.controller, capacitorF: 2e-3 } };
    expect(limits(labelled).capacitance).toMatchObject({ min: 1.6e-3, kind: 'rating' });
    expect(limits(marmot).capacitance).toMatchObject({ min: 0.48e-3, kind: 'common practice' });
  });
});
