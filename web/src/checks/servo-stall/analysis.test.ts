// SPDX-License-Identifier: MIT
// A servo of known resistance pushes in a made-up run: I = V/(R0 (1 + k t)) behind the adapter's 10 mohm; the
// analysis must give rated voltage / R0 back. Shapes that are no stalled winding must not be measured.
import { describe, expect, it } from 'vitest';
import type { Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { marmot, syntheticRun, type Signals } from '../synthetic-run-fixture.ts';
import { analyse } from './analysis.ts';
import type { Evidence } from './evidence.ts';
import { limits } from './limits.ts';

const stallOhm = 2;
const warmPerS = 0.05;
const railV = 5.9;
const offsets = [2, 5, 10, 20] as const;
const pushes = offsets.map((degrees, k) => ({ degrees, stretch: { fromS: 3 + k, toS: 3.24 + k } }));
const evidence: Evidence = { idle: { fromS: 2, toS: 2.5 }, pushes };
/** Share of full drive at each offset, for a proportional band of 6 degrees. */
const drive = (degrees: number) => Math.min(1, degrees / 6);

/** Seconds since the command reached the servo (20 ms after it was sent), and how far it drives. */
function pushAt(timeS: number): { sinceS: number; drive: number; degrees: number } | null {
  const k = Math.floor(timeS - 3);
  const sinceS = timeS - 3 - k - 0.02;
  if (k < 0 || k > 3 || sinceS < 0 || sinceS > 0.24) return null;
  return { sinceS, drive: drive(offsets[k]), degrees: offsets[k] };
}
const winding = (sinceS: number, share: number): number => {
  const inrush = 1 + 0.6 * Math.exp(-sinceS / 0.008);
  return (share * inrush * railV) / (stallOhm * (1 + warmPerS * sinceS) + 0.01);
};
function run(current = winding, change: Partial<Signals> = {}, restA = 0) {
  const railA = (timeS: number) => {
    const push = pushAt(timeS);
    return restA + (push ? current(push.sinceS, push.drive) : 0);
  };
  const tap: Signals['tap'] = (id, timeS) => {
    if (timeS < 1) return id.startsWith('thermistor') ? 25 : 0;
    if (id === 'railVoltage') return railV;
    return id === 'railCurrent'
      ? railA(timeS)
      : id === 'controllerVoltage'
        ? 8
        : id.startsWith('thermistor')
          ? 25
          : 0;
  };
  return syntheticRun({
    tap,
    feedOnS: 1,
    endS: 7,
    fast: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
    ...change,
  });
}
const found = (samples: ReturnType<typeof run>, kept = evidence) =>
  analyse({ evidence: kept, samples, rig: testRig(), car: marmot })[0];
const reason = (finding: ReturnType<typeof found>) =>
  finding.measured ? `measured ${finding.value}` : finding.reason;

describe('servo-stall analysis', () => {
  const stall = found(run()) as Measured;
  it('gives 6.0 V / R0 back although rail and winding were others', () => {
    expect(stall.measured).toBe(true);
    expect(Math.abs(stall.value / (6 / stallOhm) - 1)).toBeLessThan(0.006);
  });
  it('knows it to 3 % at most and says what rules', () => {
    expect((stall.interval[1] - stall.value) / stall.value).toBeLessThan(0.03);
    expect(stall.budget[0].source).toBe('gain of railCurrent');
  });
  it('leaves out what the electronics take at rest, or a usual share of it where the horn was held', () => {
    const [resting, holding] = [0.03, 0.2].map((restA) => found(run(winding, {}, restA)) as Measured);
    expect(resting.value / stall.value).toBeCloseTo(1, 3);
    expect(holding.value / stall.value).toBeCloseTo(1 + (0.2 - 0.015) / 2.95, 2);
    expect(holding.budget.some(({ source }) => source.includes('electronics take'))).toBe(true);
  });
  it('takes its evidence from 60 ms after the rise to the end of the widest push', () => {
    const [stretch] = stall.evidence;
    expect(stretch.fromS).toBeCloseTo(6.02 + 0.06, 2);
    expect(stretch.toS).toBeCloseTo(6.24, 6);
  });
});
describe('servo-stall analysis refuses', () => {
  it('a push that meets nothing: the current falls back to idle', () =>
    expect(reason(found(run((s, share) => winding(s, share) * Math.exp(-s / 0.03))))).toMatch(/block/));
  it('a block that gives way: the current falls faster than a winding warms', () =>
    expect(reason(found(run((s, share) => winding(s, share) * (1 - s))))).toMatch(/gave way/));
  it('a servo that draws nothing', () => expect(reason(found(run(() => 0.02)))).toMatch(/servo is dead/));
  it('a current that still grows at the widest push', () => {
    const growing = run((s, share) => winding(s, share), {});
    const last = { ...evidence, pushes: [pushes[1], { ...pushes[1], degrees: 10 }, pushes[3]] };
    expect(reason(found(growing, last))).toMatch(/still grew/);
  });
  it('a gap in a push', () =>
    expect(reason(found(run(winding, { lost: (t) => t > 6.1 && t < 6.12 })))).toMatch(/lost/));
  it('a clipped current', () =>
    expect(reason(found(run((s, share) => 5 * winding(s, share))))).toMatch(/end of its range/));
  it('a run that broke off', () =>
    expect(reason(found(run(), { ...evidence, pushes: pushes.slice(0, 2) }))).toMatch(
      /before the last push/,
    ));
});
describe('servo-stall limits', () => {
  it('are the label within its tolerance, as a rating at its voltage', () => {
    const limit = limits(marmot)['stall-current'];
    expect(limit).toMatchObject({ kind: 'rating', unit: 'A' });
    expect(limit.min).toBeCloseTo(2.4, 9);
    expect(limit.max).toBeCloseTo(3.6, 9);
    expect(limit.source).toContain('6 V');
  });
  it('are none without a rating', () => {
    const { ratedStallA: _, ...servo } = marmot.servo;
    expect(limits({ ...marmot, servo })).toEqual({});
  });
});
describe('shapes that are no fault', () => {
  const note = (finding: ReturnType<typeof found>) =>
    finding.measured ? finding.notes.join(' ') : finding.reason;
  it('a current that does not fall as a winding warms is told as it is, not carried to another voltage', () => {
    const [, held] = [0, found(run((_, share) => 1.8 * share))];
    expect((held as Measured).value).toBeCloseTo(1.8, 2);
    expect(note(held)).toMatch(/electronics limit its current, which is no fault/);
  });
  it('a step down is a limit as well: the figure is what it is held at', () => {
    const stepped = found(run((s, share) => (s < 0.125 ? 2.8 : 1.9) * share));
    expect(note(stepped)).toMatch(/electronics limit/);
    expect((stepped as Measured).value).toBeCloseTo(1.9, 1);
  });
  const soft = (rampS: number) => (s: number, share: number) =>
    (share * Math.min(1, s / rampS) ** 2 * railV) / (stallOhm * (1 + warmPerS * s) + 0.01);
  it('a soft start of 0.1 s gives the stall current of its end', () => {
    const risen = found(run(soft(0.1)));
    expect(Math.abs((risen as Measured).value / (6 / stallOhm) - 1)).toBeLessThan(0.012);
    expect(note(risen)).toMatch(/Soft start/);
  });
  it('a soft start as long as the push is not measured, and called no fault', () =>
    expect(note(found(run(soft(0.23))))).toMatch(/soft start, which is no fault|still grew/));
});
