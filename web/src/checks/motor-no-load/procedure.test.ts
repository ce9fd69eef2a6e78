// SPDX-License-Identifier: MIT
// The opening before the fail-safe test, on a made-up bench whose motor gives so many edges a second at an opening.
import { describe, expect, it } from 'vitest';
import type { SampleStore } from '#core/samples/sample-store';
import { testRig } from '#core/samples/scan-block-fixture';
import type { Bench } from '../check.ts';
import { marmot } from '../synthetic-run-fixture.ts';
import { procedure } from './procedure.ts';

/** Time passes as it is waited for; edges come evenly at the rate of the present opening. */
function benchWith(edgesPerS: (opening: number) => number, failSafeS: number | null = 0.3) {
  let [nowS, opening] = [10, 0];
  const openings: number[] = [];
  const samples = {
    edges: (fromS: number, toS: number) =>
      Float64Array.from({ length: Math.floor(edgesPerS(opening) * (toS - fromS)) }, (_, k) => fromS + k),
  } as unknown as SampleStore;
  const bench: Partial<Bench> = {
    rig: testRig(),
    car: marmot,
    samples,
    now: () => nowS,
    wait: async (seconds) => void (nowS += seconds),
    waitFor: async (seen, timeoutS) => seen(samples) || ((nowS += timeoutS), seen(samples)),
    powerUp: async () => {},
    throttle: async (fraction) => {
      opening = fraction;
      openings.push(fraction);
    },
    failSafeTest: async () => failSafeS,
    mark: () => {},
    progress: () => {},
  };
  return { openings, run: () => procedure(bench as Bench) };
}
describe('the opening before the fail-safe test', () => {
  it('stays at 12 % for a motor that turns well there', async () => {
    const { openings, run } = benchWith((opening) => 4000 * Math.max(0, opening - 0.05));
    expect(await run()).toMatchObject({ turned: true, opening: 0.12 });
    expect(openings.slice(0, 2)).toEqual([0.12, 0.5]);
  });
  it('grows by 2 % until a slow motor gives an edge every 20 ms', async () => {
    const { openings, run } = benchWith((opening) => 400 * Math.max(0, opening - 0.06));
    expect(await run()).toMatchObject({ turned: true, opening: 0.2 });
    expect(openings.slice(0, 5)).toEqual([0.12, 0.14, 0.16, 0.18, 0.2]);
  });
  it('ends at the 30 % that the rig allows, with the fail-safe test not made', async () => {
    const { openings, run } = benchWith((opening) => 30 * opening);
    expect(await run()).toMatchObject({ turned: false, opening: 0.3, failSafeS: null, steps: [] });
    expect(Math.max(...openings)).toBe(0.3);
  });
  it('never goes beyond 14 % where no edge comes at all', async () => {
    const { openings, run } = benchWith(() => 0);
    expect(await run()).toMatchObject({ turned: false, opening: 0.14 });
    expect(openings).toEqual([0.12, 0.14]);
  });
  it('is the last one where the controller drives on without pulses', async () => {
    const { openings, run } = benchWith(() => 900, 0.6);
    expect(await run()).toMatchObject({ turned: true, failSafeS: 0.6, steps: [] });
    expect(openings).toEqual([0.12]);
  });
});
