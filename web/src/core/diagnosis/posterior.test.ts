// SPDX-License-Identifier: MIT
// The arithmetic against figures from outside: Student's t with 5 degrees of freedom has density 0.37961 at 0 and
// 0.21968 at 1 (tables of the t distribution, from memory), Bayes by hand for two causes, bits of even chances.
import { describe, expect, it } from 'vitest';
import { causeIds, type CauseId } from './causes.ts';
import { featureIds } from './features.ts';
import { logLikelihood, openBits, posterior, quantileOf, valueAt, weightBits } from './posterior.ts';
import type { ServoModel } from './servo-model-form.ts';

/** Only the speed tells, and only of a failing motor. */
const made = (temper = 1, shows = 1): ServoModel => ({
  date: '2026-11-27',
  command: 'made for a test',
  seeds: [1, 1],
  cases: 0,
  temper,
  priors: Object.fromEntries(causeIds.map((id) => [id, 1 / causeIds.length])) as Record<CauseId, number>,
  features: Object.fromEntries(
    featureIds.map((id) => [
      id,
      {
        usual: { middle: 0, spread: 1 },
        causes: id === 'speed' ? { 'failing-motor': { middle: 1, spread: 1, shows } } : {},
      },
    ]),
  ) as ServoModel['features'],
});
describe('the likelihood', () => {
  it("is Student's t", () => {
    const ratio = Math.exp(
      logLikelihood({ middle: 3, spread: 2 }, 5) - logLikelihood({ middle: 3, spread: 2 }, 3),
    );
    expect(ratio).toBeCloseTo(0.21968 / 0.37961, 4);
  });
  it('has 95 % of it within 2.571 spreads', () =>
    expect(quantileOf({ middle: 1, spread: 2 }, 0.975)).toBeCloseTo(1 + 2 * 2.571, 2));
});
describe('the posterior', () => {
  it('is the prior while nothing is known, and for a feature that tells nothing', () => {
    expect(posterior(made(), {})['soft-rail']).toBeCloseTo(1 / 11, 12);
    expect(posterior(made(), { 'rest-current': 7 })['soft-rail']).toBeCloseTo(1 / 11, 12);
  });
  it('is Bayes by hand', () => {
    const odds = 0.37961 / 0.21968;
    expect(posterior(made(), { speed: 1 })['failing-motor']).toBeCloseTo(odds / (odds + 10), 4);
  });
  it('leaves those that do not show the cause as they usually are', () => {
    const odds = (0.4 * 0.37961 + 0.6 * 0.21968) / 0.21968;
    expect(posterior(made(1, 0.4), { speed: 1 })['failing-motor']).toBeCloseTo(odds / (odds + 10), 4);
    expect(valueAt(made(1, 0.4), 'speed', 'failing-motor', 0.2)).toBeCloseTo(1, 9);
    expect(valueAt(made(1, 0.4), 'speed', 'failing-motor', 0.7)).toBeCloseTo(0, 9);
  });
  it('is drawn towards the prior by the temper', () => {
    const odds = Math.sqrt(0.37961 / 0.21968);
    expect(posterior(made(0.5), { speed: 1 })['failing-motor']).toBeCloseTo(odds / (odds + 10), 4);
  });
  it('leaves log2 of 11 bits open when all are alike', () =>
    expect(openBits(posterior(made(), {}))).toBeCloseTo(Math.log2(11), 9));
  it('weighs a feature as bits against all others', () => {
    expect(weightBits(made(), 'failing-motor', 'speed', 1)).toBeCloseTo(Math.log2(0.37961 / 0.21968), 3);
    expect(weightBits(made(), 'soft-rail', 'rest-current', 1)).toBeCloseTo(0, 9);
  });
});
