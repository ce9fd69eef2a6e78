// SPDX-License-Identifier: MIT
// A receiver of known widths in a made-up run: every width, travel, jitter and frame rate must come back, and what is
// crossed, reversed, missing or lost must be told.
import { describe, expect, it } from 'vitest';
import { judgeAll } from '#core/verdicts/judge';
import type { Finding, Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { withProposal } from '../proposal.ts';
import { gaussian, marmot, syntheticRun, type Signals } from '../synthetic-run-fixture.ts';
import { analyse, results } from './analysis.ts';
import { positions, type Evidence } from './evidence.ts';
import { learntThrottle, proposes } from './learnt-widths.ts';
import { limits } from './limits.ts';

const frameS = 0.0143;
const jitterUs = 1.2;
const steering = { rest: 1512, left: 1100, right: 1890, full: 1512, brake: 1512 };
const throttle = { rest: 1496, left: 1496, right: 1496, full: 1933, brake: 1071 };
const clock = { ratio: 1, halfWidth: 1e-4, origin: 'fit' } as const;
type Widths = Record<keyof typeof steering, number>;

const held: Evidence['held'] = positions.map((position, k) => ({
  position,
  channels: [
    { fromS: 0.2 + 0.9 * k, toS: 0.6 + 0.9 * k },
    { fromS: 0.65 + 0.9 * k, toS: 1.05 + 0.9 * k },
  ],
}));
const evidence: Evidence = { powered: true, held };

function edgesOf(channels: readonly [Widths, Widths]): number[] {
  const noise = gaussian(5);
  return held.flatMap(({ position, channels: stretches }) =>
    stretches.flatMap(({ fromS, toS }, channel) => {
      const widthUs = channels[channel][position === 'rest again' ? 'rest' : position];
      const count = Math.floor((toS - fromS) / frameS);
      return Array.from({ length: count }, (_, k) => {
        const atS = fromS + 0.003 + k * frameS;
        return [atS, atS + (widthUs + jitterUs * noise()) * 1e-6];
      }).flat();
    }),
  );
}
function run(channels: readonly [Widths, Widths] = [steering, throttle], change: Partial<Signals> = {}) {
  const samples = syntheticRun({
    tap: (id) => (id === 'railVoltage' ? 6 : 0),
    edgesAtS: edgesOf(channels),
    feedOnS: Number.POSITIVE_INFINITY,
    endS: 5.7,
    fast: ['railVoltage', 'railCurrent', 'packVoltage', 'controllerVoltage'],
    ...change,
  });
  samples.clock = clock;
  return samples;
}
const found = (samples = run(), kept: Evidence = evidence) =>
  analyse({ evidence: kept, samples, rig: testRig(), car: marmot });
const byId = (findings: readonly Finding[], id: string) =>
  findings.find((finding) => finding.id === id) as Measured;
const reasons = (...of: Parameters<typeof found>) =>
  found(...of).map((f) => (f.measured ? 'measured' : f.reason));

describe('radio-range says why nothing was measured', () => {
  const all = (text: RegExp) => results.map(() => expect.stringMatching(text));
  it('no power at the receiver', () =>
    expect(reasons(run(), { powered: false, held: [] })).toEqual(all(/rail did not come up/)));
  it('no pulses', () =>
    expect(reasons(run(undefined, { edgesAtS: [] }))).toEqual(all(/Only 0 servo pulses.*transmitter/)));
  it('lost blocks', () =>
    expect(reasons(run(undefined, { lost: (s) => s > 1.2 && s < 1.3 }))).toEqual(all(/Blocks were lost/)));
  it('a wheel that nobody turned, and one that moves both channels', () => {
    expect(reasons(run([{ ...steering, left: 1512, right: 1512 }, throttle]))).toEqual(
      all(/Neither channel followed the wheel/),
    );
    expect(reasons(run([steering, { ...throttle, left: 1300 }]))).toEqual(
      all(/Both channels followed the wheel/),
    );
  });
  it('a run that ended early', () =>
    expect(reasons(run(), { powered: true, held: held.slice(0, 4) })).toEqual(all(/"brake" was heard/)));
});
describe('radio-range', () => {
  const findings = found();
  it('lists every result once', () =>
    expect(findings.map(({ id }) => id)).toEqual(results.map(({ id }) => id)));
  it.each([
    ['wheel-channel', 1],
    ['steering-left', 1100],
    ['steering-centre', 1512],
    ['steering-right', 1890],
    ['steering-per-cent', 3.95],
    ['throttle-brake', 1071],
    ['throttle-neutral', 1496],
    ['throttle-full', 1933],
    ['throttle-travel', 437],
    ['brake-travel', 425],
    ['radio-jitter', jitterUs],
    ['radio-frames', 1 / frameS],
  ])('gives %s back', (id, value) => {
    const { interval } = byId(findings, id);
    expect(interval[0]).toBeLessThanOrEqual(value);
    expect(interval[1]).toBeGreaterThanOrEqual(value);
  });
  it('knows a width to a microsecond, and a travel better than the clock alone would let it', () => {
    const half = (id: string) => (byId(findings, id).interval[1] - byId(findings, id).interval[0]) / 2;
    expect(half('throttle-full')).toBeLessThan(1);
    expect(half('throttle-travel')).toBeLessThan(1);
  });
  it('passes them all', () =>
    expect(judgeAll(findings, limits(marmot)).map(({ verdict }) => verdict)).toEqual(
      results.map(() => 'pass'),
    ));
  it('fails crossed channels by their own result, and still tells the widths', () => {
    const crossed = found(run([throttle, steering]));
    const failed = judgeAll(crossed, limits(marmot)).filter(({ verdict }) => verdict === 'fail');
    expect(failed.map(({ id }) => id)).toEqual(['wheel-channel']);
    expect(byId(crossed, 'wheel-channel').notes[0]).toMatch(/Channels crossed/);
    expect(byId(crossed, 'throttle-full').value).toBeCloseTo(1933, 0);
  });
  it('fails a reversed throttle and proposes nothing', () => {
    const reversed = found(run([steering, { ...throttle, full: 1071, brake: 1933 }]));
    const failed = judgeAll(reversed, limits(marmot)).filter(({ verdict }) => verdict === 'fail');
    expect(failed.map(({ id }) => id)).toEqual(['throttle-travel', 'brake-travel']);
    expect(byId(reversed, 'throttle-travel').notes[0]).toMatch(/reversed/);
    expect(proposes(reversed, clock)).toBeNull();
  });
});
describe('the widths to drive with', () => {
  it("are in the rig's own microseconds, in halves", () => {
    const slow = { ratio: 1.004, halfWidth: 1e-4, origin: 'fit' } as const;
    const samples = run();
    samples.clock = slow;
    const { lowUs, neutralUs, highUs } = learntThrottle(found(samples), slow)!;
    expect([lowUs - 1071, neutralUs - 1496, highUs - 1933].map(Math.abs).filter((off) => off > 1)).toEqual(
      [],
    );
    expect([lowUs, neutralUs, highUs].map((us) => us % 0.5)).toEqual([0, 0, 0]);
  });
  it('go into the car as a proposal', () => {
    const proposal = proposes(found(), clock)!;
    expect(proposal.words).toMatch(/full brake 107[01](\.5)? µs, neutral 149[56]/);
    expect(withProposal(marmot, proposal).controller).toMatchObject({
      name: marmot.controller.name,
      throttle: proposal.change.throttle,
    });
  });
  it('are none beyond what the rig can drive, or unmeasured', () => {
    expect(learntThrottle(found(run([steering, { ...throttle, full: 2300 }])), clock)).toBeNull();
    expect(learntThrottle(found(run(), { powered: false, held: [] }), clock)).toBeNull();
  });
});
