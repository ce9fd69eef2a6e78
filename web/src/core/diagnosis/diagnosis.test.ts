// SPDX-License-Identifier: MIT
// The diagnosis on 500 simulated servos that it was not learnt from, and on what a bench hands it: nothing, results
// that were not measured, one check, all of them. How the held-out servos were made stands in README.md.
import { describe, expect, it } from 'vitest';
import jstat from 'jstat';
import { carSchema } from '../parts/part.ts';
import { exact } from '../measurements/quantity.ts';
import { measured, notMeasured } from '../measurements/finding.ts';
import type { Finding } from '../measurements/measurement.ts';
import { marmotCar } from '../parts/marmot-fixture.ts';
import { casesIn } from './cases.ts';
import { causeIds } from './causes.ts';
import { chanceWords, diagnose, likelyOf } from './diagnosis.ts';
import { diagnosisText } from './diagnosis-text.ts';
import { features, featuresOf } from './features.ts';
import heldOut from './fixtures/held-out.json' with { type: 'json' };
import { skillOf } from './held-out.ts';
import { nextChecks } from './next-check.ts';
import { posterior } from './posterior.ts';
import { servoModel } from './servo-model.ts';
import { servoModelSchema } from './servo-model-form.ts';

const cases = casesIn(heldOut);
const car = carSchema.parse(marmotCar);
const finding = (id: string, value: number): Finding =>
  measured({ id, title: id, unit: '' }, exact(value), { formula: '', evidence: [] });
const idle = (value: number) => [{ check: 'servo-idle', findings: [finding('hunting-current', value)] }];

describe('what is learnt', () => {
  it('has its form', () => expect(servoModelSchema.safeParse(servoModel).error?.issues ?? []).toEqual([]));
  it('comes from other seeds than those it is tried on', () => {
    const [from, to] = servoModel.seeds;
    for (const { seed } of cases) expect(seed % 1_000_000 < from || seed % 1_000_000 > to).toBe(true);
  });
});
describe('on servos it has not seen', () => {
  const skill = skillOf(servoModel, cases);
  it('are 400 with one cause each and 100 in order', () => {
    for (const cause of causeIds) expect(skill.byCause[cause][0]).toBe(cause === 'healthy' ? 100 : 40);
  });
  it('puts the right cause first in at least 92 of 100', () =>
    expect(skill.rightFirst / skill.cases).toBeGreaterThanOrEqual(0.92));
  it('accuses at most one servo in order of a hundred', () =>
    expect(skill.byCause.healthy[1]).toBeGreaterThanOrEqual(99));
  it('has no cause that it misses in more than a quarter', () => {
    for (const [cause, [all, right]] of Object.entries(skill.byCause))
      expect(right / all, cause).toBeGreaterThan(0.75);
  });
  it('has a Brier score below 0.15, where the priors alone have 0.9', () => {
    expect(skill.brier).toBeLessThan(0.15);
    expect(
      skillOf(
        servoModel,
        cases.map((one) => ({ ...one, features: {} })),
      ).brier,
    ).toBeGreaterThan(0.85);
  });
  it.each(skill.reliability.filter(({ pairs }) => pairs >= 20))(
    'has probabilities of $from to $to come true as often as they say',
    ({ pairs, mean, came }) => {
      // 99.9 % of the binomial about the mean probability said; its tail is that of a beta distribution.
      const tail = (k: number) => (k < 0 ? 0 : k >= pairs ? 1 : 1 - jstat.beta.cdf(mean, k + 1, pairs - k));
      expect(tail(came)).toBeGreaterThan(0.0005);
      expect(1 - tail(came - 1)).toBeGreaterThan(0.0005);
    },
  );
});
describe('at the bench', () => {
  it('says nothing beyond the chances before any check when there was none', () => {
    const told = diagnose([], car);
    expect(told.heard).toEqual([]);
    expect(told.ranked[0].cause.id).toBe('healthy');
    expect(diagnosisText(told)[0]).toMatch(/No check has told anything/);
    expect(told.next.length).toBeGreaterThan(3);
  });
  it('takes a result that was not measured for no evidence', () => {
    const findings = [notMeasured({ id: 'hunting-current', title: '', unit: 'A' }, 'A gap.')];
    expect(featuresOf([{ check: 'servo-idle', findings }], car)).toEqual({});
  });
  it('takes a value that is no number for no evidence', () =>
    expect(featuresOf(idle(Number.NaN), car)).toEqual({}));
  it('takes a horn that gave way for evidence, as the end-point check says it', () => {
    const reason =
      'No stop was met within 560 µs on the side of shorter pulses, wheels off: the linkage is off.';
    const findings = [notMeasured({ id: 'end-point-left', title: '', unit: 'us' }, reason)];
    const told = diagnose([{ check: 'servo-end-points', findings }], car);
    expect(told.ranked[0].cause.id).toBe('slipping-horn');
  });
  it('finds a servo that hunts from one check, says why and never asks for that check again', () => {
    const told = diagnose(
      [{ check: 'servo-idle', findings: [...idle(0.2)[0].findings, finding('centre-current', 0.2)] }],
      car,
    );
    expect(told.ranked[0]).toMatchObject({ cause: { id: 'hunting' }, likely: 'very likely' });
    expect(told.ranked[0].evidenceFor[0]).toMatchObject({
      check: 'servo-idle',
      words: expect.stringMatching(
        /^Its current at rest swings by 0\.20 A \(r\.m\.s\.\); usual is up to 0\.0\d\d A\.$/,
      ),
    });
    expect(told.next.map(({ check }) => check)).not.toContain('servo-idle');
    expect(diagnosisText(told).join('\n')).toMatch(
      /^Very likely \((over )?9\d %\): the servo hunts\.\n {4}for: Its current/m,
    );
  });
  it('asks first for the check that settles what is left: a leaning travel for the end points', () => {
    const known = cases.filter(({ cause }) => cause === 'binding-left' || cause === 'binding-right');
    for (const one of known.slice(0, 6)) {
      const { 'left-right': _, 'stop-met': __, ...rest } = one.features;
      const open = posterior(servoModel, rest);
      expect(open['binding-left'] / open['binding-right']).toBeCloseTo(1, 1);
      expect(nextChecks(servoModel, rest)[0].check).toBe('servo-end-points');
    }
  });
  it('ends in words at their borders', () =>
    expect([0.8, 0.799, 0.2, 0.199, 0.02, 0.0199].map(likelyOf)).toEqual([
      'very likely',
      'possible',
      'possible',
      'unlikely',
      'unlikely',
      'ruled out',
    ]));
  it('never says that it is certain', () =>
    expect([1, 0.996, 0.994, 0.37, 0.0101, 0.004].map(chanceWords)).toEqual([
      'over 99 %',
      'over 99 %',
      '99 %',
      '37 %',
      '1 %',
      'below 1 %',
    ]));
  it('has evidence and chances that are whole: they sum to one, each feature is of one check', () => {
    for (const { features: known } of cases.slice(0, 50)) {
      const sum = Object.values(posterior(servoModel, known)).reduce((total, p) => total + p, 0);
      expect(sum).toBeCloseTo(1, 12);
    }
    expect(new Set(features.map(({ id }) => id)).size).toBe(features.length);
  });
});
