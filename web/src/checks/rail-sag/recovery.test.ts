// SPDX-License-Identifier: MIT
// Rails that dip and come back in a known way: the time must come back inside its interval, and the interval must be
// as wide as what the samples leave open.
import { describe, expect, it } from 'vitest';
import { guarded } from '#core/measurements/finding';
import type { Finding, Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import type { KeptBurst } from '../burst-wave.ts';
import { gaussian, marmot, syntheticRun } from '../synthetic-run-fixture.ts';
import { recoveryOf } from './recovery.ts';

const samples = syntheticRun({
  tap: (id) => (id.startsWith('thermistor') ? 25 : 0),
  feedOnS: 1,
  endS: 2,
  fast: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
});
const [openV, dropV, bandV] = [6.05, 0.15, 0.12];
const dip = (depthV: number, tauS: number) => (t: number) => dropV + depthV * Math.exp(-t / tauS);

function burst(fallV: (t: number) => number, seed: number): KeptBurst {
  const next = gaussian(seed);
  const codes = Array.from({ length: 624 }, (_, k) => {
    const sinceS = (k - 96) * 104e-6 - 143e-6;
    const volts = sinceS < 0 || sinceS > 0.04 ? openV : openV - fallV(sinceS);
    return Math.round((volts / 2 / 4.9) * 1024 + 0.6 * next());
  });
  return { tap: 'railVoltage', startS: 10, intervalS: 104e-6, actionSample: 96, codes };
}
function recovery(fallV: (t: number) => number): Measured {
  return recovered(fallV) as Measured;
}
function recovered(fallV: (t: number) => number): Finding {
  const loadBursts = [1, 2, 3].map((seed) => burst(fallV, seed));
  const evidence = { rest: { fromS: 1.2, toS: 1.8 }, steps: [], loadBursts, servoBursts: [] };
  const name = { id: 'recovery', title: 'Recovery', unit: 's' };
  return guarded([name], () => [recoveryOf(name, { evidence, samples, rig: testRig(), car: marmot })])[0];
}

describe('recovery', () => {
  it.each([
    [0.6, 0.5e-3],
    [0.5, 0.2e-3],
    [0.9, 0.15e-3],
    [0.25, 0.3e-3],
  ])('of a dip of %f V that decays with %f s comes back, known to 10 %%', (depthV, tauS) => {
    const truth = tauS * Math.log(depthV / bandV);
    const { interval, value } = recovery(dip(depthV, tauS));
    expect(interval[0]).toBeLessThan(truth);
    expect(interval[1]).toBeGreaterThan(truth);
    expect(interval[1] - interval[0]).toBeLessThan(Math.max(0.2 * value, 70e-6));
  });
  it.each([0, 0.1, 0.3])('of a dip of %f V that is gone in 40 us is told as a bound from zero', (depthV) => {
    const { interval } = recovery(dip(depthV, 40e-6));
    expect(interval[0]).toBeLessThan(1e-6);
    expect(interval[1]).toBeGreaterThan(100e-6);
    expect(interval[1]).toBeLessThan(200e-6);
  });
  it('of a rail that rings is told as lying between two samples', () => {
    const rings = (t: number) =>
      dropV + 0.9 * Math.exp(-t / 0.6e-3) * Math.cos((Math.PI * (t - 63e-6)) / 104e-6);
    const { interval } = recovery(rings);
    expect(interval[1] - interval[0]).toBeGreaterThan(104e-6);
    expect(interval[1]).toBeGreaterThan(0.9e-3);
  });
  it('of a rail that is still falling when the load ends is not measured', () => {
    const found = recovered((t) => dropV + 60 * t);
    expect(found.measured ? 'measured' : found.reason).toMatch(
      /still on its way when the load of 40 ms ended/,
    );
  });
});
