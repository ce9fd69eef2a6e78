// SPDX-License-Identifier: MIT
// A made-up servo at rest: a steady current, then one that pulses; and slow ramps of the pulse behind which a follower
// with a known dead band draws current in steps of its own. The analysis must give the figures back.
import { describe, expect, it } from 'vitest';
import type { Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { marmot, syntheticRun, type Signals } from '../synthetic-run-fixture.ts';
import { analyse } from './analysis.ts';
import type { Evidence } from './evidence.ts';

const idleA = 0.012;
const rampS = 2;
const widthsUs = [1500, 1540, 1459, 1541, 1458, 1542, 1457];
const startS = 5;
const evidence: Evidence = {
  rest: { fromS: 3, toS: 5 },
  ramps: widthsUs.slice(1).map((_, k) => ({ fromS: startS + k * rampS, toS: startS + (k + 1) * rampS })),
};
function steeringUs(timeS: number): number {
  const at = Math.min(Math.max(0, (timeS - startS) / rampS), widthsUs.length - 1.001);
  const k = Math.floor(at);
  return widthsUs[k] + (at - k) * (widthsUs[k + 1] - widthsUs[k]);
}
/** Follows the pulse by `leapUs` once it is more than `deadUs` away; each time it draws 40 mA for 10 ms. */
function follower(deadUs: number, leapUs = 0.6, lateS = 0.02) {
  let atUs = 1500;
  let drewAtS = Number.NEGATIVE_INFINITY;
  return (timeS: number) => {
    const away = steeringUs(timeS - lateS) - atUs;
    if (Math.abs(away) > deadUs) {
      atUs += Math.sign(away) * (Math.abs(away) - deadUs + leapUs);
      drewAtS = timeS;
    }
    return timeS - drewAtS < 0.01 ? 0.04 : 0;
  };
}
/** The same, but it drives for `frames` frames of 40 ms before it leaps. */
function hesitant(deadUs: number, leapUs: number, frames: number) {
  let atUs = 1500;
  let beganS = Number.NaN;
  return (timeS: number) => {
    const away = steeringUs(timeS - 0.02) - atUs;
    if (Number.isNaN(beganS) && Math.abs(away) > deadUs) beganS = timeS;
    const sinceS = timeS - beganS;
    if (sinceS > frames * 0.04) {
      atUs += Math.sign(away) * leapUs;
      beganS = Number.NaN;
    }
    return sinceS % 0.04 < 0.01 ? 0.04 : 0;
  };
}
function run(extra: (timeS: number) => number, change: Partial<Signals> = {}) {
  return syntheticRun({
    tap: (id, timeS) => {
      if (timeS < 1) return id.startsWith('thermistor') ? 25 : 0;
      if (id === 'railVoltage') return 5.9;
      return id === 'railCurrent' ? idleA + extra(timeS) : 0;
    },
    steeringUs,
    feedOnS: 1,
    endS: startS + (widthsUs.length - 1) * rampS + 0.1,
    fast: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
    ...change,
  });
}
const found = (samples: ReturnType<typeof run>, kept = evidence) =>
  analyse({ evidence: kept, samples, rig: testRig(), car: marmot });
const reason = (finding: ReturnType<typeof found>[number]) =>
  finding.measured ? `measured ${finding.value}` : finding.reason;
const covers = ({ interval: [low, high] }: Measured, value: number) => low <= value && value <= high;

describe('servo-idle analysis', () => {
  const [centre, rms, pulses, dead] = found(run(follower(4))) as Measured[];
  it('gives the steady current back, its interval ruled by the drift of the zero', () => {
    expect(Math.abs(centre.value - idleA)).toBeLessThan(1e-3);
    expect(covers(centre, idleA)).toBe(true);
    expect(centre.budget[0].source).toMatch(/zero drift|non-linearity/);
  });
  it('finds no hunting in a steady current', () => {
    expect(covers(rms, 0)).toBe(true);
    expect(rms.interval[1]).toBeLessThan(0.005);
    expect(pulses.value).toBe(0);
  });
  it('gives the dead band back', () => {
    expect(covers(dead, 4)).toBe(true);
    expect(dead.interval[1] - dead.interval[0]).toBeLessThan(3);
  });
  it('tells a wide dead band from a usual one', () => {
    const [, , , wide] = found(run(follower(14))) as Measured[];
    expect(covers(wide, 14)).toBe(true);
    expect(wide.interval[0]).toBeGreaterThan(8);
  });
  // By hand: a servo that comes up to twice its dead band further at each leap is silent between two of them for longer
  // than after a turn; the longest silence would say nothing of its dead band.
  it.each([
    [4.5, 5],
    [4.5, 8],
    [23, 40],
  ])('of %d us comes out although the servo leaps by %d us', (deadUs, leapUs) => {
    const [, , , leaping] = found(run(follower(deadUs, leapUs))) as Measured[];
    expect(covers(leaping, deadUs)).toBe(true);
    expect(leaping.interval[1] - leaping.interval[0]).toBeLessThan(Math.max(2.5, 0.2 * deadUs));
  });
  it('comes out of a servo that needs several frames of drive for one leap', () => {
    const [, , , slow] = found(run(hesitant(14, 19, 4))) as Measured[];
    expect(covers(slow, 14)).toBe(true);
    expect(slow.interval[0]).toBeGreaterThan(8);
  });
  // A square wave of 0.3 A has an r.m.s. value of half of it about its mean; 20 periods of 50 ms a second.
  it('tells r.m.s. value and pulses a second of a servo that hunts, and has no dead band for it', () => {
    const square = (timeS: number) => ((timeS * 20) % 1 < 0.5 ? 0.3 : 0);
    const [, hunting, rate, silent] = found(run(square));
    expect(covers(hunting as Measured, 0.15)).toBe(true);
    expect((hunting as Measured).u).toBeLessThan(0.01);
    expect(covers(rate as Measured, 20)).toBe(true);
    expect(reason(silent)).toMatch(/never rests/);
  });
});
describe('servo-idle analysis refuses', () => {
  it('a servo that does not follow', () => expect(reason(found(run(() => 0))[3])).toMatch(/does not follow/));
  it('a gap at rest', () =>
    expect(reason(found(run(() => 0, { lost: (t) => t > 4 && t < 4.1 }))[1])).toMatch(/lost at rest/));
  it('a gap in a ramp', () =>
    expect(reason(found(run(follower(4), { lost: (t) => t > 8 && t < 8.1 }))[3])).toMatch(/lost in a ramp/));
  it('a run that broke off in the ramps', () =>
    expect(reason(found(run(follower(4)), { ...evidence, ramps: evidence.ramps.slice(0, 3) })[3])).toMatch(
      /before the last turn/,
    ));
});
