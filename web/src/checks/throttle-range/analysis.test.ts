// SPDX-License-Identifier: MIT
// A controller of known dead band and end in a made-up run, on a motor after n = kv (d V - I R): where it starts, where
// it gives all, whether it grows to the end; and what the rig's clock makes of widths that were not learnt with it.
import { describe, expect, it } from 'vitest';
import { judgeAll } from '#core/verdicts/judge';
import type { Finding, Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import type { ClockFit } from '#core/samples/sample-store';
import { marmot, syntheticRun } from '../synthetic-run-fixture.ts';
import { analyse, results } from './analysis.ts';
import type { Evidence } from './evidence.ts';
import { limits } from './limits.ts';

const kv = 3000;
const busV = 8;
const dropV = 0.06;
const throttles = [0.12, 0.16, 0.2, 0.24, 0.5, 0.7, 0.85, 0.97, 1];
const pointsAt = (list: readonly number[]) =>
  list.map((throttle, k) => ({ throttle, stretch: { fromS: 1.4 + k, toS: 1.9 + k } }));
const points = pointsAt(throttles);
/** Where the motor needs more to turn fast enough for the first spin. */
const wider = throttles.map((throttle) => (throttle < 0.4 ? throttle + 0.12 : throttle));
const openedWider = { opening: 0.24, points: pointsAt(wider) };
const slowing = (fromS: number) => ({
  before: { fromS, toS: fromS + 0.1 },
  later: { fromS: fromS + 0.4, toS: fromS + 0.5 },
});
const coastAtS = 11;
const brakeAtS = 12;
const evidence: Evidence = {
  turned: true,
  opening: 0.12,
  failSafeS: 0.3,
  points,
  coast: slowing(coastAtS),
  brake: slowing(brakeAtS),
};
interface Controller {
  readonly deadBand: number;
  readonly fullAt: number;
}
const learnt: Controller = { deadBand: 0.045, fullAt: 0.965 };

function rpmAt({ deadBand, fullAt }: Controller, list: readonly number[], timeS: number): number {
  const index = Math.floor(timeS - 1);
  if (timeS >= coastAtS + 0.1 && timeS < coastAtS + 0.6) return 15000;
  if (timeS >= brakeAtS + 0.1) return 9000;
  const throttle = list[index] ?? (timeS > 10 ? 1 : 0);
  const duty = Math.min(1, Math.max(0, (throttle - deadBand) / (fullAt - deadBand)));
  return Math.max(0, kv * (duty * busV - dropV));
}
function run(controller = learnt, list: readonly number[] = throttles, clock?: ClockFit) {
  const samples = syntheticRun({
    tap: (id) => (id === 'controllerVoltage' ? busV : id === 'railVoltage' ? 6 : 0),
    edgesPerS: (timeS) => (2 * rpmAt(controller, list, timeS)) / 60,
    feedOnS: 0.8,
    endS: 13,
    fast: ['controllerVoltage', 'packCurrentNarrow', 'railVoltage', 'packCurrentWide'],
  });
  samples.clock = clock ?? { ratio: 1, halfWidth: 1e-4, origin: 'fit' };
  return samples;
}
const found = (samples = run(), kept: Partial<Evidence> = {}) =>
  analyse({ evidence: { ...evidence, ...kept }, samples, rig: testRig(), car: marmot });
const byId = (findings: readonly Finding[], id: string) => findings.find((f) => f.id === id) as Measured;
const reasons = (...of: Parameters<typeof found>) =>
  found(...of).map((f) => (f.measured ? 'measured' : f.reason));
const verdict = (findings: readonly Finding[], id: string) =>
  judgeAll(findings, limits(marmot)).find((one) => one.id === id)!.verdict;
/** Where the motor's friction and winding let it start, of the travel. */
const starts = ({ deadBand, fullAt }: Controller) => deadBand + (dropV / busV) * (fullAt - deadBand);
function covers(findings: readonly Finding[], id: string, perCent: number): void {
  const { interval } = byId(findings, id);
  expect(interval[0], id).toBeLessThanOrEqual(perCent);
  expect(interval[1], id).toBeGreaterThanOrEqual(perCent);
}

describe('throttle-range says why nothing was measured', () => {
  const samples = run();
  const all = (text: RegExp) => results.map(() => expect.stringMatching(text));
  it('a motor that did not turn, a controller that drove on', () => {
    expect(reasons(samples, { turned: false, opening: 0.14 })).toEqual(all(/Too few Hall edges/));
    expect(reasons(samples, { failSafeS: null })).toEqual(all(/full throttle is not safe/));
  });
  it('a run that ended early', () =>
    expect(reasons(samples, { points: points.slice(0, 6) })).toEqual(all(/ended before full throttle/)));
  it('only the brake is missing', () =>
    expect(reasons(samples, { brake: null })).toEqual([
      'measured',
      'measured',
      'measured',
      expect.stringMatching(/ended before the brake/),
    ]));
});
describe('throttle-range', () => {
  it('gives start and end of a learnt range back, and passes them', () => {
    const findings = found();
    expect(findings.map(({ id }) => id)).toEqual(results.map(({ id }) => id));
    covers(findings, 'throttle-start', 100 * starts(learnt));
    covers(findings, 'throttle-full-at', 96.5);
    covers(findings, 'throttle-end-growth', 0);
    for (const { id } of results) expect(verdict(findings, id), id).toBe('pass');
    expect(byId(findings, 'throttle-full-at').notes[0]).toMatch(/3\.[45] % of the travel does nothing/);
    expect(byId(findings, 'throttle-full-at').u).toBeLessThan(0.5);
  });
  it('tells what the brake takes beyond coasting', () => {
    const top = kv * (busV - dropV);
    covers(found(), 'brake-effect', 100 * (15000 / top - 9000 / top));
  });
  it('fails a controller that waits for longer pulses than it gets', () => {
    const unlearnt = { deadBand: 0.06, fullAt: 1.3 };
    const findings = found(run(unlearnt, wider), openedWider);
    covers(findings, 'throttle-full-at', 130);
    covers(findings, 'throttle-end-growth', 100);
    expect(verdict(findings, 'throttle-full-at')).toBe('fail');
    expect(verdict(findings, 'throttle-end-growth')).toBe('fail');
    expect(byId(findings, 'throttle-full-at').notes[0]).toMatch(/teach it the range/);
  });
  it('fails a controller that gives all after three quarters of the travel', () => {
    const findings = found(run({ deadBand: 0.04, fullAt: 0.78 }));
    covers(findings, 'throttle-full-at', 78);
    expect(verdict(findings, 'throttle-full-at')).toBe('fail');
  });
  it('fails a motor that starts far into the travel', () => {
    const late = { deadBand: 0.16, fullAt: 0.97 };
    const findings = found(run(late, wider), openedWider);
    covers(findings, 'throttle-start', 100 * starts(late));
    expect(verdict(findings, 'throttle-start')).toBe('fail');
    expect(verdict(findings, 'throttle-full-at')).toBe('pass');
  });
  it('leaves open what widths by another clock leave open', () => {
    const near = found();
    const far = found(run(learnt, throttles, { ratio: 1.004, halfWidth: 2e-4, origin: 'fit' }));
    const half = (findings: readonly Finding[], id: string) =>
      byId(findings, id).interval[1] - byId(findings, id).value;
    expect(half(far, 'throttle-full-at')).toBeGreaterThan(1.5 * half(near, 'throttle-full-at'));
    // Both meanings: driven as learnt, and meant in true time, 0.4 % of 1905 us or 1.8 % of the travel beyond.
    covers(far, 'throttle-full-at', 96.5);
    covers(far, 'throttle-full-at', 96.5 + 1.8);
    // Speed grows no more from 96.5 %, or up to 98.3 %: 1.3 of the last 3.
    covers(far, 'throttle-end-growth', 0);
    covers(far, 'throttle-end-growth', 43);
  });
  it('does not call the end growing where only the pulses of a slow clock fall short of it', () => {
    const short = run({ deadBand: 0.045, fullAt: 0.999 }, throttles, {
      ratio: 0.996,
      halfWidth: 2e-4,
      origin: 'fit',
    });
    covers(found(short), 'throttle-end-growth', 97);
    covers(found(short), 'throttle-end-growth', 37);
  });
});
