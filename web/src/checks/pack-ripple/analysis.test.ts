// SPDX-License-Identifier: MIT
// A pack current with a folded line of known size in a made-up run: the share that the capacitor lets through comes
// back, a line that the noise hides is bounded, and nothing is told without the switching frequency.
import { describe, expect, it } from 'vitest';
import type { Finding, Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { judgeAll } from '#core/verdicts/judge';
import type { Car } from '#core/parts/part';
import type { KeptBurst } from '../burst-wave.ts';
import { gaussian, marmot, syntheticRun } from '../synthetic-run-fixture.ts';
import { analyse } from './analysis.ts';
import type { Evidence } from './evidence.ts';
import { foldedBand } from './folded-line.ts';
import { limits } from './limits.ts';

const supplyV = 4.9;
const cornerHz = 340;
const intervalS = 104e-6;
const meanA = { idle: 0.2, half: 1.7 };
/** (2 I / pi) sin(pi d) with I = 1.5 A / 0.5. */
const pulsedA = (2 * 3) / Math.PI;
const withHz = (pwmHz?: number): Car => ({ ...marmot, controller: { ...marmot.controller, pwmHz } });

/** Every conversion of a wide tap behind one pole, `share` of the pulsed current at the true frequency. */
function burst(share: number, pwmHz: number, seed: number, ofHz = cornerHz): KeptBurst {
  const next = gaussian(seed);
  const amplitude = (share * pulsedA) / Math.hypot(1, pwmHz / ofHz);
  const codes = Array.from({ length: 8192 }, (_, k) => {
    const amps = meanA.half + amplitude * Math.sin(2 * Math.PI * pwmHz * k * intervalS);
    return Math.round(((amps / 40 + 0.75) / supplyV) * 1024 + 0.6 * next());
  });
  return { tap: 'packCurrentWide', startS: 5, intervalS, actionSample: 0, codes };
}
/** A step of 14 A that ends after 0.12 s, behind one pole. */
function loadOff(ofHz: number, seed: number): KeptBurst {
  const next = gaussian(seed);
  const codes = Array.from({ length: 4096 }, (_, k) => {
    const sinceS = k * intervalS - 0.12;
    const amps = 14 * (sinceS < 0 ? 1 : Math.exp(-sinceS * 2 * Math.PI * ofHz));
    return Math.round(((amps / 40 + 0.75) / supplyV) * 1024 + 0.6 * next());
  });
  return { tap: 'packCurrentWide', startS: 5, intervalS, actionSample: null, codes };
}
const samples = syntheticRun({
  tap: (id, t) => (id === 'packCurrentNarrow' ? (t < 1 ? 0 : t < 3 ? meanA.idle : meanA.half) : undefined),
  feedOnS: 1,
  endS: 5,
  fast: ['controllerVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'],
});
function analysed(share: number, pwmHz: number, car = withHz(pwmHz), kept: Partial<Evidence> = {}) {
  const evidence: Evidence = {
    turned: true,
    opening: 0.12,
    failSafeS: 0.2,
    idle: { fromS: 1.5, toS: 2.5 },
    half: { fromS: 3.5, toS: 4.5 },
    bursts: [11, 12, 13, 14, 15, 16].map((seed) => burst(share, pwmHz, seed)),
    ...kept,
  };
  return analyse({ evidence, samples, rig: testRig(), car });
}
const verdictOf = (findings: readonly Finding[]) => judgeAll(findings, limits(marmot))[0].verdict;
const reason = ([finding]: readonly Finding[]): string => (finding.measured ? 'measured' : finding.reason);

describe('pack-ripple analysis refuses', () => {
  it('a controller whose switching frequency nobody entered', () =>
    expect(reason(analysed(0.5, 16e3, withHz()))).toMatch(/switching frequency is not known/));
  it('a frequency that folds onto a constant current', () =>
    expect(reason(analysed(0.5, 1 / intervalS, withHz(1)))).toMatch(/multiple of the sampling rate/));
  it('a run that never came to half throttle', () =>
    expect(reason(analysed(0.5, 16e3, undefined, { half: null, bursts: [] }))).toMatch(/not reached/));
  it('a controller that drives on without pulses', () =>
    expect(reason(analysed(0.5, 16e3, undefined, { failSafeS: null, half: null, bursts: [] }))).toMatch(
      /drove on/,
    ));
});
describe('pack-ripple analysis', () => {
  it.each([8100, 12_000, 16_300])('at %i Hz gives nearly all back, truth inside', (pwmHz) => {
    const findings = analysed(0.95, pwmHz);
    const { value, interval } = findings[0] as Measured;
    expect(Math.abs(value / 95 - 1)).toBeLessThan(0.1);
    expect(interval[0]).toBeLessThan(95);
    expect(interval[1]).toBeGreaterThan(95);
  });
  // One pole answers a step by exp(-2 pi f t): a filter a tenth below its declared corner, found and made up for.
  it('takes the corner of the filter from the pack load going off', () => {
    const slow = 0.9 * cornerHz;
    const bursts = [11, 12, 13, 14, 15, 16].map((seed) => burst(0.95, 8100, seed, slow));
    const [declared] = analysed(0.95, 8100, undefined, { bursts }) as Measured[];
    const loads = [21, 22].map((seed) => loadOff(slow, seed));
    const [measuredOne] = analysed(0.95, 8100, undefined, { bursts, loadOff: loads }) as Measured[];
    expect(declared.value).toBeLessThan(88);
    expect(Math.abs(measuredOne.value / 95 - 1)).toBeLessThan(0.03);
    expect(measuredOne.u).toBeLessThan(0.7 * declared.u);
  });
  it('keeps the declared corner where no load is seen to go off', () => {
    const quiet = { ...loadOff(cornerHz, 31), codes: Array.from({ length: 4096 }, () => 160) };
    const [plain] = analysed(0.95, 8100) as Measured[];
    const [without] = analysed(0.95, 8100, undefined, { loadOff: [quiet] }) as Measured[];
    expect(without.value).toBe(plain.value);
  });
  it('fails a capacitor that lets nearly all through, passes one that keeps most', () => {
    expect(verdictOf(analysed(1, 8100))).toBe('fail');
    expect(verdictOf(analysed(0.3, 8100))).toBe('pass');
  });
  it('bounds a line that the noise hides, and never passes what could be too much', () => {
    const hidden = analysed(0.05, 30_100);
    const { interval, notes } = hidden[0] as Measured;
    expect(notes.join()).toMatch(/does not stand out/);
    expect(interval[0]).toBeLessThan(5);
    expect(interval[1]).toBeGreaterThan(5);
    expect(verdictOf(hidden)).not.toBe('fail');
  });
});
describe('where a frequency is seen folded', () => {
  // By hand: 16 kHz less 9615.4 Hz is 6384.6 Hz, less another 9615.4 Hz is 3230.8 Hz the other way round.
  it('lies about |f - n fs|, within what frequency and clock may be off', () => {
    const [low, high] = foldedBand(16_000, 1 / intervalS);
    expect((low + high) / 2).toBeCloseTo(3230.8, 0);
    expect(high - low).toBeCloseTo(2 * 160, 6);
  });
});
