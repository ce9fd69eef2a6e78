// SPDX-License-Identifier: MIT
// Bursts of a rail with known ripple, noise of the converter on top: peak to peak and r.m.s. against the closed form
// of a sine, of two sines, and of none.
import { describe, expect, it } from 'vitest';
import type { Finding, Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { judgeAll } from '#core/verdicts/judge';
import type { KeptBurst } from '../burst-wave.ts';
import { gaussian, marmot, syntheticRun } from '../synthetic-run-fixture.ts';
import { analyse } from './analysis.ts';
import { limits } from './limits.ts';

const supplyV = 4.9;
/** Sines of frequency (Hz) and amplitude (V) on 6 V. */
function burst(sines: readonly (readonly [number, number])[], seed = 3): KeptBurst {
  const next = gaussian(seed);
  const codes = Array.from({ length: 2048 }, (_, k) => {
    const t = k * 104e-6;
    const volts = sines.reduce((sum, [hertz, a]) => sum + a * Math.sin(2 * Math.PI * hertz * t), 6);
    return Math.round((volts / 2 / supplyV) * 1024 + 0.6 * next());
  });
  return { tap: 'railVoltage', startS: 2, intervalS: 104e-6, actionSample: null, codes };
}
const samples = syntheticRun({
  tap: () => undefined,
  feedOnS: 1,
  endS: 2,
  fast: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
});
const analysed = (...bursts: KeptBurst[]) =>
  analyse({ evidence: { bursts }, samples, rig: testRig(), car: marmot });
const find = (findings: readonly Finding[], id: string) => findings.find((one) => one.id === id) as Measured;
const verdictOf = (findings: readonly Finding[]) => judgeAll(findings, limits(marmot))[0].verdict;

describe('rail-ripple analysis', () => {
  it('refuses a torn burst and a run without any', () => {
    const torn = { ...burst([]), codes: burst([]).codes.map((code, k) => (k === 9 ? null : code)) };
    for (const [findings, words] of [
      [analysed(torn), /lost/],
      [analysed(), /No burst/],
    ] as const)
      expect(findings[0].measured ? '' : findings[0].reason).toMatch(words);
  });
  it('finds no ripple in noise, and says how little could hide there', () => {
    const quiet = analysed(burst([]), burst([], 4));
    const { value, interval, notes } = find(quiet, 'rail-ripple-pp');
    expect(value).toBe(0);
    expect(interval[1]).toBeLessThan(0.005);
    expect(notes.join()).toMatch(/Nothing stands out/);
    expect(verdictOf(quiet)).toBe('pass');
  });
  it.each([300, 1200, 3000])('gives size and frequency of a sine at %i Hz back', (hertz) => {
    const ringing = analysed(burst([]), burst([[hertz, 0.2]]));
    const peaks = find(ringing, 'rail-ripple-pp');
    expect(Math.abs(peaks.value / 0.4 - 1)).toBeLessThan(0.08);
    expect(find(ringing, 'rail-ripple-rms').value).toBeCloseTo(0.2 * Math.SQRT1_2, 2);
    expect(Math.abs(Number(/Mostly at (\d+) Hz/.exec(peaks.notes.join())![1]) - hertz)).toBeLessThan(5);
    expect(verdictOf(ringing)).toBe('fail');
  });
  it('puts two sines together: 0.06 and 0.04 V swing over 0.2 V', () => {
    const value = find(analysed(burst([[700, 0.06], [1900, 0.04]])), 'rail-ripple-pp').value; // prettier-ignore
    expect(Math.abs(value / 0.2 - 1)).toBeLessThan(0.08);
  });
  it('passes a ripple of 0.1 V peak to peak', () =>
    expect(verdictOf(analysed(burst([[800, 0.05]])))).toBe('pass'));
});
