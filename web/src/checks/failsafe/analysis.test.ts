// SPDX-License-Identifier: MIT
// A receiver of known manners in a made-up run: the time until the throttle closes, where it stands after, what it does
// on return; and every way in which that can't be told.
import { describe, expect, it } from 'vitest';
import { judgeAll } from '#core/verdicts/judge';
import type { Finding, Measured } from '#core/measurements/measurement';
import { testRig } from '#core/samples/scan-block-fixture';
import { gaussian, marmot, syntheticRun, type Signals } from '../synthetic-run-fixture.ts';
import { analyse, results } from './analysis.ts';
import type { Evidence } from './evidence.ts';
import { limits } from './limits.ts';

const frameS = 0.02;
const restUs = 1500;
const fullUs = 1900;
const lostS = 3;
const known = {
  rest: { fromS: 0.5, toS: 1 },
  full: { fromS: 1.2, toS: 1.7 },
  half: { fromS: 2, toS: 2.5 },
  loss: { fromS: 2.8, toS: 6 },
  comeback: { fromS: 6.2, toS: 10 },
  lostS,
};
const evidence: Evidence = { powered: true, known };
/** Width over time; NaN: no pulse. */
type WidthUs = (timeS: number) => number;

const manners =
  (closesAfterS: number, after = restUs, kick: WidthUs = () => restUs): WidthUs =>
  (timeS) => {
    if (timeS < 1.1) return restUs;
    if (timeS < 1.85) return fullUs;
    if (timeS < lostS + closesAfterS) return 1700;
    return timeS < 7 ? after : kick(timeS);
  };
function run(widthUs: WidthUs, change: Partial<Signals> = {}) {
  const noise = gaussian(9);
  const edges: number[] = [];
  for (let atS = 0.1; atS < 9.98; atS += frameS) {
    const us = widthUs(atS) + 1.3 * noise();
    if (!Number.isNaN(us)) edges.push(atS, atS + us * 1e-6);
  }
  return syntheticRun({
    tap: () => 6,
    edgesAtS: edges,
    feedOnS: Number.POSITIVE_INFINITY,
    endS: 10,
    fast: ['railVoltage', 'railCurrent', 'packVoltage', 'controllerVoltage'],
    ...change,
  });
}
const found = (widthUs: WidthUs, kept = evidence, change = {}) =>
  analyse({ evidence: kept, samples: run(widthUs, change), rig: testRig(), car: marmot });
const byId = (findings: readonly Finding[], id: string) => findings.find((f) => f.id === id) as Measured;
const reasons = (...of: Parameters<typeof found>) =>
  found(...of).map((f) => (f.measured ? 'measured' : f.reason));
const verdicts = (findings: readonly Finding[]) =>
  judgeAll(findings, limits(marmot)).map(({ verdict }) => verdict);

describe('failsafe says why nothing was measured', () => {
  const all = (text: RegExp) => results.map(() => expect.stringMatching(text));
  it('no power at the receiver', () =>
    expect(reasons(manners(0.4), { powered: false, known: null })).toEqual(all(/rail did not come up/)));
  it('a channel that the trigger does not move, or moves the wrong way', () => {
    expect(reasons(() => 1500)).toEqual(all(/did not follow the trigger/));
    expect(reasons((s) => 3000 - manners(0.4)(s))).toEqual(all(/reversed/));
  });
  it('a trigger that nobody held', () =>
    expect(reasons((s) => (s > 1.85 ? restUs : manners(0.4)(s)))).toEqual(
      all(/held at 0 % before the loss/),
    ));
  it('a receiver that stops its pulses: the controller decides then', () =>
    expect(reasons((s) => (s > 3.4 && s < 7 ? Number.NaN : manners(0.4)(s)))).toEqual([
      expect.stringMatching(/stopped its throttle pulses 0\.4 s after.*controller's own rule/),
      expect.stringMatching(/stopped its throttle pulses/),
      'measured',
    ]));
  it('pulses that never come back', () =>
    expect(reasons((s) => (s > 6.1 ? Number.NaN : manners(0.4)(s)))[2]).toMatch(/did not come back/));
});
describe('failsafe', () => {
  it.each([0.2, 0.45, 0.65])(
    'passes a receiver that closes after %d s, and knows the time to a third',
    (s) => {
      const findings = found(manners(s));
      expect(verdicts(findings)).toEqual(['pass', 'pass', 'pass']);
      const { value, interval } = byId(findings, 'fail-safe-time');
      expect(Math.abs(value - s)).toBeLessThan(0.03);
      expect((interval[1] - interval[0]) / 2).toBeLessThan(0.33);
    },
  );
  it('is undecided where the hand decides, and fails a receiver that takes two seconds', () => {
    expect(verdicts(found(manners(0.9)))).toEqual(['undecided', 'pass', 'pass']);
    expect(verdicts(found(manners(2)))).toEqual(['fail', 'fail', 'pass']);
  });
  it('takes brake for safe', () => {
    const findings = found(manners(0.4, 1340));
    expect(verdicts(findings)).toEqual(['pass', 'pass', 'pass']);
    expect(byId(findings, 'throttle-after-loss').value).toBeCloseTo(-40, 0);
  });
  it('fails a throttle that stays, and says where it stands', () => {
    const findings = found(manners(10));
    expect(verdicts(findings)).toEqual(['not measured', 'fail', 'fail']);
    expect(reasons(manners(10))[0]).toMatch(/still stood at 5\d % when the watch ended, 3\.0 s/);
    expect(byId(findings, 'throttle-after-loss').notes[0]).toMatch(/fail-safe to neutral or brake/);
  });
  it('fails a throttle that opens for 0.2 s on return', () => {
    const kick: WidthUs = (s) => (s < 7.2 ? 1700 : restUs);
    const findings = found(manners(0.4, restUs, kick));
    expect(verdicts(findings)).toEqual(['pass', 'pass', 'fail']);
    expect(byId(findings, 'throttle-on-return').value).toBeCloseTo(50, 0);
  });
});
