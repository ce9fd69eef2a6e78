// SPDX-License-Identifier: MIT
// Moves of a made-up servo: an inrush, an even current for a time that grows with the length, an end. The slope must
// come back whatever all moves have in common, and so must what the voltage model makes of it.
import { describe, expect, it } from 'vitest';
import type { Measured } from '#core/measurements/measurement';
import { torqueRating } from '#core/limits/servo-ratings';
import { scaledTime } from '#core/limits/rating-scaling';
import { testRig } from '#core/samples/scan-block-fixture';
import { servoSchema } from '#core/parts/part';
import { marmot, syntheticRun, type Signals } from '../synthetic-run-fixture.ts';
import { analyse } from './analysis.ts';
import type { Evidence } from './evidence.ts';
import { limits } from './limits.ts';

const lengths = [200, 400, 600, 800];
const secondsPerUs = 0.14 / 600;
const commonS = -0.008;
const everyS = 0.6;
const moves = Array.from({ length: 24 }, (_, k) => ({
  lengthUs: lengths[Math.floor(k / 2) % 4],
  longer: k % 2 === 0,
  stretch: { fromS: 3 + k * everyS, toS: 3 + (k + 1) * everyS - 0.02 },
}));
const evidence: Evidence = {
  idle: { fromS: 2, toS: 2.5 },
  moves,
  horn: { shortDegrees: -40, longDegrees: 40, apartUs: 800 },
};
function currentA(timeS: number, plateauA: number): number {
  const k = Math.floor((timeS - 3) / everyS);
  if (k < 0 || k >= moves.length || Number.isNaN(plateauA)) return 0.01;
  const sinceS = timeS - 3 - k * everyS - 0.017;
  const runsS = commonS + secondsPerUs * moves[k].lengthUs;
  if (sinceS < 0 || sinceS > runsS) return 0.01;
  return 0.01 + plateauA + 2 * Math.exp(-sinceS / 0.004);
}
function run(plateauA = 0.2, change: Partial<Signals> = {}) {
  return syntheticRun({
    tap: (id, timeS) => {
      if (timeS < 1) return id.startsWith('thermistor') ? 25 : 0;
      if (id === 'railVoltage') return 6.002;
      return id === 'railCurrent' ? currentA(timeS, plateauA) : 0;
    },
    feedOnS: 1,
    endS: 3 + moves.length * everyS,
    fast: ['railVoltage', 'railCurrent', 'controllerVoltage', 'packCurrentWide'],
    ...change,
  });
}
const found = (samples: ReturnType<typeof run>, kept = evidence, car = marmot) =>
  analyse({ evidence: kept, samples, rig: testRig(), car });
const reason = (finding: ReturnType<typeof found>[number]) =>
  finding.measured ? `measured ${finding.value}` : finding.reason;
const withServo = (change: object) => ({ ...marmot, servo: { ...marmot.servo, ...change } });

describe('servo-speed analysis', () => {
  const [time, rated, us] = found(run()) as Measured[];
  it('gives 0.140 s for 60 degrees and for 600 us back, whatever the moves have in common', () => {
    expect(Math.abs(time.value - 0.14)).toBeLessThan(0.001);
    expect(Math.abs(us.value - 0.14)).toBeLessThan(0.001);
    expect(us.notes[0]).toMatch(/make each move 8 ms shorter/);
  });
  it('knows it to 3 ms, ruled by the protractor', () => {
    expect(time.interval[1] - time.value).toBeLessThan(0.003);
    expect(time.budget[0].source).toMatch(/protractor|comes to rest/);
  });
  it('leaves it as it is where the rail stands at the rated voltage', () =>
    expect(rated.value).toBeCloseTo(time.value, 6));
  it('carries it to 7.4 V by k (V - V0), with the doubt of the model', () => {
    const [, at74] = found(run(), evidence, withServo({ ratedVoltageV: 7.4 })) as Measured[];
    const carried = scaledTime([{ value: time.value, atV: 6 }], 7.4) as { value: number; share: number };
    expect(Math.abs(at74.value / carried.value - 1)).toBeLessThan(0.002);
    expect(at74.budget.find(({ source }) => source.startsWith('carrying'))?.u).toBeGreaterThan(
      0.9 * carried.share * at74.value,
    );
  });
  it('takes the degrees of a part whose turn is known', () => {
    const car = withServo({ measuredDegreesPerUs: { degreesPerUs: 0.1, u: 0.0002 } });
    const [known] = found(run(), { ...evidence, horn: null }, car) as Measured[];
    expect(known.value).toBeCloseTo(0.14, 3);
    expect(known.u).toBeLessThan(time.u);
  });
  it('takes the mean of two looks at the protractor, and their doubt falls', () => {
    const horn = { shortDegrees: -40, longDegrees: 41, apartUs: 800 };
    const again = { shortDegrees: -40, longDegrees: 39 };
    const [once] = found(run(), { ...evidence, horn }) as Measured[];
    const [twice] = found(run(), { ...evidence, horn: { ...horn, again } }) as Measured[];
    expect(twice.value / once.value).toBeCloseTo(81 / 80, 6);
    expect(twice.u).toBeLessThan(0.8 * once.u);
  });
  it('without degrees tells microseconds only, and says why', () => {
    const [none, , inUs] = found(run(), { ...evidence, horn: { ...evidence.horn!, longDegrees: -38 } });
    expect(reason(none)).toMatch(/turned by only 2\.0 degrees/);
    expect(inUs.measured).toBe(true);
  });
});
describe('servo-speed analysis refuses', () => {
  it('a servo that draws nothing', () =>
    expect(reason(found(run(Number.NaN))[2])).toMatch(/drew no current/));
  it('a servo that never arrives', () => {
    const held = run(0.2, {
      tap: (id, t) => (t < 1 ? 0 : id === 'railCurrent' ? 1 : id === 'railVoltage' ? 6 : 0),
    });
    expect(reason(found(held)[2])).toMatch(/Only 0 of 24 moves|drew no current/);
  });
  it('a servo that hunts where its moves end, and says what to do', () => {
    const hunting = (timeS: number) => 0.2 * (1 + Math.sign(Math.sin(timeS * 2 * Math.PI * 22)));
    const restless = run(0.2, {
      tap: (id, t) => {
        if (t < 1) return 0;
        if (id === 'railVoltage') return 6;
        return id === 'railCurrent' ? currentA(t, 0.2) + (t > 3 ? hunting(t) : 0) : 0;
      },
    });
    for (const finding of found(restless)) {
      expect(reason(finding)).toMatch(/does not come to rest.*it hunts.*"Servo: current at rest, hunting/);
      expect(reason(finding)).not.toMatch(/[Rr]un again/);
    }
  });
  it('a gap in a move', () =>
    expect(reason(found(run(0.2, { lost: (t) => t > 6 && t < 6.05 }))[2])).toMatch(/lost in a move/));
  it('a run that broke off before the long moves', () =>
    expect(reason(found(run(), { ...evidence, moves: moves.slice(0, 4) })[2])).toMatch(
      /before the long moves/,
    ));
  it('a part whose known turn is no better than a guess', () =>
    expect(
      servoSchema.safeParse({ ...marmot.servo, measuredDegreesPerUs: { degreesPerUs: 0.1, u: 0.02 } }).error
        ?.issues[0].message,
    ).toMatch(/more than a tenth/));
});
describe('servo-speed limit', () => {
  it('is the label at the rated voltage and 15 % more', () => {
    const limit = limits(withServo({ ratedSecondsPer60: 0.14 }))['time-per-60-rated'];
    expect(limit).toMatchObject({ max: expect.closeTo(0.161, 6), kind: 'rating' });
  });
  it('is none without a label', () => expect(limits(marmot)['time-per-60-rated']).toBeUndefined());
  // Common practice, no source: a full-size servo of 180 to 185 oz.in at 6.0 V has about 240 oz.in at 7.4 V and
  // takes 0.06 to 0.07 s for 60 degrees there. 1 oz.in is 7.0616 mN m.
  it('carries a usual full-size servo from 6.0 to 7.4 V as people know it', () => {
    const ozIn = 7.0616e-3;
    for (const at6 of [180, 185]) {
      const servo = { ...marmot.servo, ratedTorqueNm: at6 * ozIn };
      const torque = torqueRating(servo, 7.4) as { value: number; share: number };
      expect(Math.abs(torque.value / ozIn / 240 - 1)).toBeLessThan(2 * torque.share + 0.02);
    }
    const at6S = scaledTime([{ value: 0.065, atV: 7.4 }], 6) as { value: number; share: number };
    expect(at6S.value).toBeGreaterThan(0.075);
    expect(at6S.value).toBeLessThan(0.09);
  });
});
