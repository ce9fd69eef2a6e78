// SPDX-License-Identifier: MIT
// Which limit holds: own override before the part's rating, before its baseline, before its class, and what it says
// it stands in place of. Class figures are the project's own, from memory.
import { describe, expect, it } from 'vitest';
import { classRows } from '#core/limits/class-data';
import { classDefault } from '#core/limits/class-default';
import type { Baseline } from '#core/history/baseline';
import { judge } from '#core/verdicts/judge';
import { measuredAs, budgetLine } from '#core/history/history-fixture';
import { carSchema, type Car, type Motor, type Servo } from '#core/parts/part';
import { testRig } from '#core/samples/scan-block-fixture';
import { checks } from './index.ts';
import { overridables, overrideTroubles } from './override-troubles.ts';
import { marmot } from './synthetic-run-fixture.ts';

const limitsOf = (checkId: string, car: Car) =>
  checks.find(({ id }) => id === checkId)!.limits(carSchema.parse(car), testRig());
const noLoad = (car: Car) => limitsOf('motor-no-load', car)['no-load-current'];
const stall = (change: Partial<Servo>) =>
  limitsOf('servo-stall', { ...marmot, servo: { ...marmot.servo, ...change } })['stall-current'];
const withMotor = (change: Partial<Motor>): Car => ({ ...marmot, motor: { ...marmot.motor, ...change } });
const key = 'motor-no-load/no-load-current';
const baseline: Baseline = {
  checkResultId: key,
  partName: marmot.motor.name,
  unit: 'A',
  centre: 2.8,
  sigma: 0.02,
  runIds: ['a', 'b', 'c', 'd', 'e'],
  fromDate: '2026-11-01',
  toDate: '2026-11-05',
  rigSerial: '17',
};
const override = { checkResultId: key, max: 3.3, reason: 'runs hot above this', date: '2026-11-20' };

describe('precedence', () => {
  const unrated = withMotor({ ratedNoLoadA: undefined });
  it('class where there is nothing else', () =>
    expect(noLoad(unrated)).toEqual({
      max: 5.625,
      unit: 'A',
      kind: 'common practice',
      source: expect.stringMatching(/^spec, 13\.5 turns: .*from memory, no source$/),
    }));
  it('own baseline before the class', () =>
    expect(noLoad({ ...unrated, baselines: [baseline] })).toMatchObject({
      max: 3.5,
      warnMax: expect.closeTo(3.22, 9),
      kind: 'baseline',
      displaced: [expect.stringMatching(/^common practice, at most 5\.625 A: spec, 13\.5 turns/)],
    }));
  it('rating before the baseline', () =>
    expect(noLoad({ ...marmot, baselines: [baseline] })).toMatchObject({
      max: 3.75,
      kind: 'rating',
      displaced: [
        expect.stringMatching(/^baseline, at most 3\.5 A: its own first 5 runs/),
        expect.stringMatching(/^common practice, at most 5\.625 A/),
      ],
    }));
  it('a baseline of another motor, or in another unit, is not used and said', () => {
    const other = noLoad({ ...unrated, baselines: [{ ...baseline, partName: 'Spare motor' }] });
    expect(other).toMatchObject({
      kind: 'common practice',
      refused: ['The baseline is of "Spare motor" and is not used for "Marmot 13.5T".'],
    });
    expect(noLoad({ ...unrated, baselines: [{ ...baseline, unit: 'mA' }] })).toMatchObject({
      refused: [expect.stringContaining('in mA and not in A')],
    });
  });
  it('a baseline at another voltage is not used and said; one at this voltage, or at none, is', () => {
    const of = (condition?: string) => noLoad({ ...unrated, baselines: [{ ...baseline, condition }] });
    expect(of('11.1 V')).toMatchObject({
      kind: 'common practice',
      refused: ['The baseline holds at 11.1 V and not at 7.4 V: it is not used.'],
    });
    expect([of('7.4 V').kind, of().kind]).toEqual(['baseline', 'baseline']);
  });
  it('own override before all, with its reason and date', () =>
    expect(noLoad({ ...marmot, baselines: [baseline], overrides: [override] })).toEqual({
      max: 3.3,
      unit: 'A',
      kind: 'own override',
      source: 'set by hand on 2026-11-20: runs hot above this',
      displaced: [
        expect.stringMatching(/^rating, at most 3\.75 A/),
        expect.stringMatching(/^baseline/),
        expect.stringMatching(/^common practice/),
      ],
    }));
  it('an override gives a limit to a result that has none', () => {
    const own = {
      checkResultId: 'rail-sag/recovery',
      max: 0.02,
      reason: 'the receiver of this car',
      date: '2026-11-20',
    };
    expect(limitsOf('rail-sag', marmot).recovery).toBe(undefined);
    expect(limitsOf('rail-sag', { ...marmot, overrides: [own] }).recovery).toMatchObject({
      max: 0.02,
      unit: 's',
    });
  });
  it('an override out by a factor of a thousand is not used, and the limit says why', () =>
    expect(noLoad({ ...marmot, overrides: [{ ...override, max: 3300 }] })).toMatchObject({
      kind: 'rating',
      refused: [expect.stringMatching(/^Own override not used\. The upper bound 3300 A.*slip of the unit/)],
    }));
});
describe('troubles of a whole car', () => {
  const troubles = (change: Partial<Car>) => overrideTroubles({ ...marmot, ...change }, testRig());
  it('are none where all hold', () =>
    expect(troubles({ overrides: [override], baselines: [baseline] })).toEqual([]));
  it('name an override and a baseline of no result, and a slip of the unit', () =>
    expect(
      troubles({
        overrides: [
          { ...override, checkResultId: 'motor-no-load/torque' },
          { ...override, max: 3300 },
        ],
        baselines: [{ ...baseline, checkResultId: 'servo-stall/torque' }],
      }),
    ).toEqual([
      expect.stringMatching(/^No check has a result "motor-no-load\/torque"\. There are: [a-z-]+\/[a-z-]+, /),
      expect.stringMatching(/3300 A is more than 30 times above the default of 3\.75 A/),
      expect.stringMatching(/"servo-stall\/torque", and no check has that result/),
    ]));
  it('hold an override against the default, not against itself', () =>
    expect(
      overridables({ ...marmot, overrides: [override] }, testRig()).find(({ key: of }) => of === key)?.max,
    ).toBe(3.75));
});
describe('a rating at another voltage', () => {
  it('of a servo is carried by k (V - V0), says so and brings its doubt', () => {
    const limit = stall({ ratedVoltageV: 7.4, ratedStallAtV: 6, ratedStallA: 3 });
    // (7.4 - 0.3)/(6 - 0.3) = 1.245614; within 20 %.
    expect(limit.max).toBeCloseTo(3 * 1.245614 * 1.2, 5);
    expect(limit.doubt!.share).toBeCloseTo(((1.4 / 5.7 ** 2) * (0.3 / Math.sqrt(3))) / 1.245614, 6);
    expect(limit.source).toMatch(/rated at 6 V, carried to 7\.4 V by k \(V - V0\)/);
  });
  it('makes undecided what the bare bound would pass', () => {
    const limit = stall({ ratedVoltageV: 7.4, ratedStallAtV: 6, ratedStallA: 3 });
    const finding = measuredAs(limit.max! - 0.03, [budgetLine('noise', 0.012, { shape: 'normal' })]);
    expect(judge(finding, { ...limit, doubt: undefined }).verdict).toBe('pass');
    expect(judge(finding, limit)).toMatchObject({
      verdict: 'undecided',
      note: expect.stringContaining('Carrying the rating to another voltage makes'),
    });
  });
  it('too far away is refused with words, and nothing of it is used', () => {
    const limit = stall({ ratedVoltageV: 7.4, ratedStallAtV: 4.8, ratedStallA: 3, size: 'standard' });
    expect(limit).toMatchObject({
      min: 3.5,
      max: 7,
      kind: 'common practice',
      refused: [expect.stringMatching(/rated at 4\.8 V is not used at 7\.4 V/)],
    });
  });
  it('of a motor on three cells is refused in favour of the class', () =>
    expect(noLoad(withMotor({ ratedNoLoadAtV: 11.1 }))).toMatchObject({
      kind: 'common practice',
      refused: [expect.stringContaining('Enter the label')],
    }));
  it('is used as it stands where it holds, without doubt', () =>
    expect(noLoad(marmot)).not.toHaveProperty('doubt'));
});
describe('class of a motor', () => {
  it.each([
    [6, 15],
    [6.01, 11.25],
    [13.5, 5.625],
    [15, 5.625],
    [15.01, 4.375],
    [80, 2.5],
  ])('%d turns: at most %d A, the upper end of the class and a quarter', (turns, max) => {
    const car = { ...marmot, motor: { ...marmot.motor, turns, ratedNoLoadA: undefined } };
    expect(classDefault(key, car)?.max).toBeCloseTo(max, 9);
  });
});
describe('class of a servo', () => {
  it('without a size or figures has no limit', () =>
    expect(stall({ ratedStallA: undefined })).toBe(undefined));
  it('by its size, carried from 7.4 to the 6.0 V it is rated for', () => {
    const limit = stall({ ratedStallA: undefined, size: 'low-profile' });
    expect(limit.min).toBeCloseTo((2.5 * 5.7) / 7.1, 6);
    expect(limit.max).toBeCloseTo((5 * 5.7) / 7.1, 6);
    expect(limit.source).toMatch(/no source/);
  });
  it('by torque and time goes from the electrical floor to twice it', () => {
    const limit = stall({
      ratedStallA: undefined,
      ratedVoltageV: 7.4,
      ratedTorqueNm: 1.694772,
      ratedSecondsPer60: 0.065,
    });
    expect(limit.min).toBeCloseTo(3.6897, 3);
    expect(limit.max).toBeCloseTo(2 * 3.6897, 3);
  });
});
describe('the class data', () => {
  const known = checks.flatMap(({ id, results }) =>
    results.map((result) => ({ key: `${id}/${result.id}`, ...result })),
  );
  it.each(classRows.map((row) => [`${row.result}, ${row.partClass}`, row] as const))(
    'row %s is of a result that a check has, in its unit',
    (_, row) => expect(known.find((result) => result.key === row.result)?.unit).toBe(row.unit),
  );
  it('motor classes rise without a gap, and take each turn number once', () => {
    for (const result of [key, 'motor-no-load/kv']) {
      const turns = classRows.filter((row) => row.result === result).map(({ upToTurns }) => upToTurns!);
      expect(turns).toEqual(turns.toSorted((a, b) => a - b));
      expect(new Set(turns).size).toBe(turns.length);
    }
  });
  it('the usual kV of a class lies near its turns times kV', () => {
    for (const { partClass, typical, min, max, of } of classRows.filter(
      (row) => row.of === 'one over turns',
    )) {
      const turns = Number(/[\d.]+/.exec(partClass)![0]);
      expect(of).toBe('one over turns');
      expect(typical![0] * turns).toBeGreaterThan(min! * 0.97);
      expect(typical![1] * turns).toBeLessThan(max! * 1.03);
    }
  });
});
