// SPDX-License-Identifier: MIT
// A pack of known cell resistances under steps of load in a made-up run, its open voltage drifting: the analysis must
// give pack, cells, sag and the standard's form back.
import { describe, expect, it } from 'vitest';
import type { Finding, Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { judgeAll } from '#core/verdicts/judge';
import { marmot, syntheticRun } from '../synthetic-run-fixture.ts';
import { analyse, results } from './analysis.ts';
import type { Evidence } from './evidence.ts';
import { limits } from './limits.ts';

const onS = [4, 11, 18];
const after = (s: number) => ({ fromS: s + 0.68, toS: s + 0.96 });
const evidence: Evidence = {
  free: [2.7, 9.7, 16.7, 23.7].map((fromS) => ({ fromS, toS: fromS + 0.28 })),
  loaded: onS.map(after),
  second: { light: { fromS: 33.7, toS: 33.98 }, heavy: after(34) },
};
interface Pack {
  readonly lower?: number;
  readonly upper?: number;
  readonly leads?: number;
  /** Of the open pack, V/s. */
  readonly driftVPerS?: number;
  readonly lightA?: number;
  readonly heavyA?: number;
}
const amps = (t: number, { lightA = 1, heavyA = 5 }: Pack) => {
  if (t < 1) return 0;
  if (t > 34) return t < 35 ? heavyA : 0.2;
  if (t > 24) return lightA;
  return onS.some((s) => t > s && t < s + 1) ? 17 : 0.2;
};
function analysed(pack: Pack, kept: Partial<Evidence> = {}, plugged = true, lost?: (t: number) => boolean) {
  const { lower = 6e-3, upper = 6e-3, leads = 6e-3, driftVPerS = 0 } = pack;
  const tap = (id: string, t: number) => {
    const i = amps(t, pack);
    const openV = 8.2 - driftVPerS * t;
    if (id === 'packVoltage') return openV - i * (lower + upper + leads);
    if (id === 'midCell') return plugged ? openV / 2 - i * lower : 0;
    return id === 'packCurrentWide' ? i : id === 'thermistorAmbient' ? 21 : undefined;
  };
  const samples = syntheticRun({
    tap,
    feedOnS: 1,
    endS: 36,
    fast: ['packVoltage', 'packCurrentWide', 'controllerVoltage', 'railVoltage'],
    lost,
  });
  return analyse({ evidence: { ...evidence, ...kept }, samples, rig: testRig(), car: marmot });
}
const find = (findings: readonly Finding[], id: string) => findings.find((one) => one.id === id) as Measured;
const reason = (findings: readonly Finding[], id: string): string => {
  const finding = findings.find((one) => one.id === id)!;
  return finding.measured ? 'measured' : finding.reason;
};
const verdictOf = (findings: readonly Finding[], id: string) =>
  judgeAll(findings, limits(marmot)).find((judged) => judged.id === id)?.verdict;

describe('pack-sag analysis refuses', () => {
  it('a run that never came to two steps', () => {
    const short = analysed({}, { free: evidence.free.slice(0, 2), loaded: evidence.loaded.slice(0, 1) });
    for (const id of ['pack-resistance', 'lower-cell-resistance', 'race-sag'])
      expect(reason(short, id)).toMatch(/Too few steps/);
  });
  it('a pack load that draws nothing', () => {
    const dead = analysed(
      { heavyA: 1 },
      { loaded: evidence.free.slice(1), free: Array(4).fill(evidence.free[0]) },
    );
    expect(reason(dead, 'pack-resistance')).not.toBe('measured');
  });
  it('cells without the balance lead, and still tells the pack', () => {
    const unplugged = analysed({}, {}, false);
    expect(reason(unplugged, 'lower-cell-resistance')).toMatch(/balance lead/);
    expect(reason(unplugged, 'upper-cell-resistance')).toMatch(/balance lead/);
    expect(verdictOf(unplugged, 'pack-resistance')).toBe('pass');
  });
  it('the second way where it was not reached', () =>
    expect(reason(analysed({}, { second: null }), 'dc-resistance')).toMatch(/not reached/));
  it('a step with a lost block', () =>
    expect(
      reason(
        analysed({}, {}, true, (t) => t > 4.7 && t < 4.75),
        'pack-resistance',
      ),
    ).toMatch(/lost/));
});
describe('pack-sag analysis', () => {
  const findings = analysed({});
  it('tells every result, and passes this pack', () => {
    expect(findings.map(({ id }) => id)).toEqual(results.map(({ id }) => id));
    for (const id of ['pack-resistance', 'lower-cell-resistance', 'upper-cell-resistance'])
      expect(verdictOf(findings, id)).toBe('pass');
  });
  it('gives pack, cells and sag back, known to 8 % at most', () => {
    for (const [id, truth] of [
      ['pack-resistance', 0.018],
      ['lower-cell-resistance', 0.006],
      ['upper-cell-resistance', 0.012],
      ['race-sag', 40 * 0.018],
    ] as const) {
      const { value, interval } = find(findings, id);
      expect(Math.abs(value / truth - 1), id).toBeLessThan(0.03);
      expect((interval[1] - value) / value, id).toBeLessThan(0.08);
    }
  });
  it('allows for an open pack that falls by 5 mV each second', () =>
    expect(find(analysed({ driftVPerS: 0.005 }), 'pack-resistance').value).toBeCloseTo(0.018, 3));
  it('fails a tired pack and one weak cell by name', () => {
    expect(verdictOf(analysed({ lower: 18e-3, upper: 18e-3 }), 'pack-resistance')).toBe('fail');
    const weak = analysed({ lower: 20e-3 });
    expect(verdictOf(weak, 'lower-cell-resistance')).toBe('fail');
    expect(verdictOf(weak, 'upper-cell-resistance')).toBe('pass');
    expect(verdictOf(analysed({ upper: 20e-3 }), 'upper-cell-resistance')).toBe('fail');
  });
  it('notes the air and how far the second way is from the standard', () => {
    expect(find(findings, 'pack-resistance').notes.join()).toMatch(/Air at 21 °C/);
    expect(find(findings, 'dc-resistance').notes.join()).toMatch(/0\.2\d? and 1\.0\d? times/);
  });
});
