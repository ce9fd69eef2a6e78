// SPDX-License-Identifier: MIT
// Made-up servos whose one feature is known: what is learnt of them must be that, and no more.
import { describe, expect, it } from 'vitest';
import { seededNoise } from '../measurements/seeded-noise-fixture.ts';
import type { KnownCase } from './cases.ts';
import { causeIds, type CauseId } from './causes.ts';
import { featureIds, type Features } from './features.ts';
import { learntFrom } from './learning.ts';

const told = { date: '2026-11-27', command: 'made for a test' };
const each = 40;
/** Everything at 0 but what is given; scatter of `spread` in the feature looked at. */
function made(
  middles: Partial<Record<CauseId, number>>,
  spread: number,
  missing: Features = {},
): KnownCase[] {
  const noise = seededNoise(3);
  return causeIds.flatMap((cause, c) =>
    Array.from({ length: each }, (_, k) => {
      const known = featureIds.map(
        (id) => [id, id === 'speed' ? (middles[cause] ?? 0) + spread * noise() : 0] as const,
      );
      const features = Object.fromEntries(known.filter(([id]) => !(id in missing)));
      return { seed: c * each + k, cause, severity: 1, features };
    }),
  );
}
describe('what is learnt', () => {
  it('is nothing from servos in order that do not tell a feature', () =>
    expect(() => learntFrom(made({}, 0.1, { 'left-right': 0 }), told)).toThrow(
      /too few healthy servos tell left-right/,
    ));
  it('is middle and spread of servos in order, and of a cause that differs', () => {
    const { speed } = learntFrom(made({ 'failing-motor': 1 }, 0.1), told).features;
    expect(speed.usual.middle).toBeCloseTo(0, 1);
    expect(speed.usual.spread).toBeCloseTo(0.1, 1);
    expect(Object.keys(speed.causes)).toEqual(['failing-motor']);
    expect(speed.causes['failing-motor']?.middle).toBeCloseTo(1, 1);
  });
  it('has no spread below what real servos are given', () =>
    expect(learntFrom(made({}, 0), told).features.speed).toEqual({
      usual: { middle: 0, spread: 0.05 },
      causes: {},
    }));
  it('tells in how many servos of a cause it shows', () => {
    const half = made({ hunting: 3 }, 0.1).map((one, k) =>
      one.cause === 'hunting' && k % 2 === 0 ? { ...one, features: { ...one.features, speed: 0 } } : one,
    );
    const found = learntFrom(half, told).features.speed.causes.hunting;
    expect(found?.middle).toBeCloseTo(3, 1);
    expect(found?.shows).toBeCloseTo(0.5, 2);
    expect(learntFrom(made({ hunting: 3 }, 0.1), told).features.speed.causes.hunting?.shows).toBeGreaterThan(
      0.98,
    );
  });
  it('is tempered where features repeat each other, and never above 1', () => {
    const repeated = made({ 'failing-motor': 0.25 }, 0.1).map((one) => ({
      ...one,
      features: Object.fromEntries(featureIds.map((id) => [id, one.features.speed])) as Features,
    }));
    expect(learntFrom(repeated, told).temper).toBeLessThan(0.6);
    expect(learntFrom(made({ 'failing-motor': 3 }, 0.1), told).temper).toBeLessThanOrEqual(1);
  });
  it('says where it comes from, with chances that sum to one', () => {
    const model = learntFrom(made({}, 0.1), told);
    expect(model).toMatchObject({
      ...told,
      seeds: [0, causeIds.length * each - 1],
      cases: causeIds.length * each,
    });
    expect(Object.values(model.priors).reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 12);
  });
});
