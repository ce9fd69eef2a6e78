// SPDX-License-Identifier: MIT
// k (V - V0) against a fact of the trade (common practice, no source): a steering servo of 180 to 185 oz.in at 6.0 V
// gives about 240 at 7.4 V; plain proportion says 222 to 228. And against figures by hand.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toSi } from '../units/units.ts';
import {
  scaledNoLoad,
  scaledRating,
  scaledTime,
  scalingModels,
  type RatingAt,
  type Scaled,
} from './rating-scaling.ts';
import { electricalFloorA } from './servo-ratings.ts';

const ounceInch = (value: number) => toSi(value, 'ounceInch');
const scaled = (answer: ReturnType<typeof scaledRating>): Scaled => {
  if ('unusable' in answer) throw new Error(answer.unusable);
  return answer;
};
const at = (value: number, atV: number): RatingAt => ({ value, atV });

describe('one rating of torque', () => {
  it.each([180, 182.5, 185])(
    '%d oz.in at 6.0 V agrees with about 240 at 7.4 V within its own doubt',
    (torque) => {
      const { value, share } = scaled(scaledRating('torque', [at(ounceInch(torque), 6)], 7.4));
      expect(Math.abs(value - ounceInch(240))).toBeLessThan(2 * share * value);
      expect(value).toBeGreaterThan(ounceInch(torque) * (7.4 / 6));
    },
  );
  it('factor by hand: (7.4 - 1.55)/(6 - 1.55) = 1.31461; doubt 1.4/4.45^2 x 0.75/sqrt 3 over it = 2.329 %', () => {
    const { value, share, words } = scaled(scaledRating('torque', [at(1, 6)], 7.4));
    expect(value).toBeCloseTo(1.31461, 5);
    expect(share).toBeCloseTo(0.02329, 4);
    expect(words).toMatch(/rated at 6 V, carried to 7\.4 V by k \(V - V0\).*no source/);
  });
  it('is used as it stands at its own voltage, without doubt', () =>
    expect(scaledRating('torque', [at(1.7, 7.4)], 7.4)).toMatchObject({ value: 1.7, share: 0 }));
});
describe('two ratings', () => {
  const pair = [at(ounceInch(182.5), 6), at(ounceInch(240), 7.4)];
  it('of 182.5 and 240 oz.in give V0 = 1.56 V and 256.4 oz.in at 7.8 V', () => {
    const { value, words } = scaled(scaledRating('torque', pair, 7.8));
    // k = 57.5/1.4 = 41.071 oz.in/V; V0 = 6 - 182.5/41.071 = 1.5565; 41.071 x (7.8 - 1.5565) = 256.43.
    expect(value / ounceInch(1)).toBeCloseTo(256.43, 2);
    expect(words).toContain('V0 1.56 V');
  });
  it('bring the doubt of their rounding: at the middle 1 %/sqrt 3 x root of the squares of the halves', () => {
    const { value, share } = scaled(scaledRating('torque', pair, 6.7));
    expect(value / ounceInch(1)).toBeCloseTo(211.25, 2);
    expect(share).toBeCloseTo(((0.01 / Math.sqrt(3)) * Math.hypot(91.25, 120)) / 211.25, 6);
  });
  it.each([
    ['falling with voltage', [at(2, 6), at(1, 7.4)]],
    ['equal', [at(2, 6), at(2, 7.4)]],
    ['of two units', [at(12, 6), at(240, 7.4)]],
    ['with V0 far below zero', [at(2, 6), at(2.05, 7.4)]],
  ])('%s are refused with the advice to look again', (_, ratings) =>
    expect(scaledRating('torque', ratings, 6.7)).toMatchObject({
      unusable: expect.stringMatching(/do not fit one line.*Look at the label again/),
    }),
  );
});
describe('refusals', () => {
  it.each([
    [4.8, 7.4],
    [8.4, 4.8],
  ])('a rating at %d V is not used at %d V', (from, to) =>
    expect(scaledRating('current', [at(3, from)], to)).toMatchObject({
      unusable: expect.stringMatching(/is not used at .* V: .*Enter the label's rating for/),
    }),
  );
  it('nothing rated is told', () =>
    expect(scaledRating('torque', [], 6)).toEqual({ unusable: 'There is no rated torque.' }));
  it('a voltage that is no number is never carried', () =>
    expect(scaledRating('torque', [at(1, 6)], Number.NaN)).toHaveProperty('unusable'));
});
it('torque, speed and current lie between plain proportion and the steepest V0, up and down', () =>
  fc.assert(
    fc.property(
      fc.constantFrom('torque' as const, 'speed' as const, 'current' as const),
      fc.double({ min: 4.8, max: 8.4, noNaN: true }),
      fc.double({ min: 0.71, max: 1.39, noNaN: true }),
      (quantity, from, ratio) => {
        fc.pre(Math.abs(from * ratio - from) > 0.03);
        const to = from * ratio;
        const { highV0 } = scalingModels[quantity];
        const steepest = (to - highV0) / (from - highV0);
        const { value } = scaled(scaledRating(quantity, [at(1, from)], to));
        return value >= Math.min(ratio, steepest) - 1e-9 && value <= Math.max(ratio, steepest) + 1e-9;
      },
    ),
  ));
it('time goes the other way: 0.08 s at 6.0 V is 0.063 s at 7.4 V, in the 0.06 to 0.07 s of such servos', () => {
  // speed x (7.4 - 0.75)/(6 - 0.75) = 1.26667, time 0.08/1.26667 = 0.06316.
  const { value } = scaled(scaledTime([at(0.08, 6)], 7.4));
  expect(value).toBeCloseTo(0.06316, 5);
});
describe('no-load current of a motor', () => {
  it('from 8.4 to 7.4 V: between 3.0 and 2.643 A, the middle 2.821, doubt 0.179/sqrt 3', () => {
    const { value, share } = scaled(scaledNoLoad(at(3, 8.4), 7.4));
    expect(value).toBeCloseTo(2.8214, 4);
    expect(share * value).toBeCloseTo(0.17857 / Math.sqrt(3), 4);
  });
  it('from 11.1 V is refused', () =>
    expect(scaledNoLoad(at(3, 11.1), 7.4)).toMatchObject({
      unusable: expect.stringContaining('its own baseline'),
    }));
});
it('floor of the stall current: 240 oz.in and 0.065 s at 7.4 V are 27.3 W and 3.69 A', () => {
  const servo = {
    kind: 'servo',
    name: 'Lamplighter 240',
    digital: true,
    ratedVoltageV: 7.4,
    ratedStallTolerance: 0.15,
    degreesPerUs: 0.09,
    ratedTorqueNm: ounceInch(240),
    ratedSecondsPer60: 0.065,
  } as const;
  // 1.694772 N.m x 1.0471976/0.065 rad/s / 7.4 V = 3.6897 A.
  expect(electricalFloorA(servo)).toBeCloseTo(3.6897, 3);
  expect(electricalFloorA({ ...servo, ratedTorqueNm: undefined })).toBe(undefined);
});
