// SPDX-License-Identifier: MIT
// Plans: orders, what is left after an interruption, what a rig can't do, and the summary's worst thing first.
import { describe, expect, it } from 'vitest';
import { testRig } from '#core/samples/scan-block-fixture';
import type { Check } from '../check.ts';
import { checkById, checks } from '../index.ts';
import { planById, plans } from './index.ts';
import { itemSeconds, orderedItems } from './order.ts';
import { keyOf, type Plan, type PlanItem } from './plan.ts';
import { emptyRecord, type PlanOutcome, planRecordSchema, withOutcome } from './plan-record.ts';
import { itemsLeft, secondsLeft, skipReason, wiringFor, wiringMade } from './progress.ts';
import { planSummary } from './summary.ts';

const made = (id: string, durationS: number, ...wiring: string[]): Check =>
  ({
    id,
    title: `Title of ${id}`,
    durationS,
    wiring: wiring.map((words) => ({ words })),
    needs: { taps: id === 'far' ? ['moonlight'] : [], outputs: [] },
  }) as unknown as Check;
const known = [made('near', 20, 'A'), made('also-near', 30, 'A'), made('far', 20, 'B')];
const lookUp = (id: string) => known.find((check) => check.id === id);
const item = (check: string, chance: number, ...after: string[]): PlanItem => ({
  kind: 'check',
  check,
  chance,
  cost: 1,
  after,
});
const plan: Plan = {
  id: 'made-up',
  title: 'Made up',
  why: '',
  items: [item('far', 0.1), item('also-near', 0.1), item('near', 0.1)],
};
const keys = (items: readonly PlanItem[]) => items.map(keyOf);
const done = (
  key: string,
  verdict: PlanOutcome['verdict'],
  more: Partial<PlanOutcome> = {},
): PlanOutcome => ({
  key,
  at: '2026-01-01T00:00:00.000Z',
  kind: 'check',
  verdict,
  words: `${key} ${verdict}`,
  ...more,
});
const after = (...outcomes: PlanOutcome[]) =>
  outcomes.reduce(withOutcome, emptyRecord('made-up', 'Marmot', '2026-01-01T00:00:00.000Z'));

describe('order of a plan', () => {
  it('refuses items that wait for each other', () => {
    const circle = { ...plan, items: [item('near', 1, 'far'), item('far', 1, 'near')] };
    expect(() => orderedItems(circle, lookUp)).toThrow(/circle/);
  });
  it('keeps to what its wiring serves before it plugs something else', () =>
    expect(keys(orderedItems(plan, lookUp))).toEqual(['far', 'near', 'also-near']));
  it('takes the likelier and dearer first', () => {
    const risky = { ...plan, items: [item('far', 0.1), { ...item('also-near', 0.1), cost: 9 }] };
    expect(keys(orderedItems(risky, lookUp))).toEqual(['also-near', 'far']);
  });
  it('counts wiring once', () => {
    expect(itemSeconds(plan.items[2], new Set(), lookUp)).toBe(20 + 3 + 15);
    expect(itemSeconds(plan.items[2], new Set(['A']), lookUp)).toBe(20 + 3);
    expect(secondsLeft(plan, after(), lookUp)).toBe(20 + 30 + 20 + 3 * 3 + 2 * 15);
  });
});
describe('a plan that was interrupted', () => {
  it('goes on at the item it stopped at', () => {
    const record = after(done('far', 'pass'), done('near', 'not measured', { ending: 'link lost' }));
    expect(keys(itemsLeft(plan, record, lookUp))).toEqual(['near', 'also-near']);
  });
  it('tries again what another rig could not do', () =>
    expect(keys(itemsLeft(plan, after(done('far', 'not measured', { kind: 'skipped' })), lookUp))).toEqual([
      'far',
      'near',
      'also-near',
    ]));
  it('does nothing twice that came to its end, not even a Fail', () =>
    expect(keys(itemsLeft(plan, after(done('far', 'fail', { ending: 'done' })), lookUp))).toEqual([
      'near',
      'also-near',
    ]));
  it('asks for new wiring only', () => {
    const wired = wiringMade(after(done('near', 'pass')), lookUp);
    expect(wiringFor(known[1], wired)).toEqual([]);
    expect(wiringFor(known[2], wired)).toEqual([{ words: 'B' }]);
  });
  it('reads its record back and refuses another file with words', () => {
    const record = after(done('far', 'pass', { ending: 'done', rigS: 3 }));
    expect(planRecordSchema.parse(JSON.parse(JSON.stringify(record)))).toEqual(record);
    const other = planRecordSchema.safeParse({ ...record, format: 'shopping list' });
    expect(other.error?.issues[0].message).toMatch(/no plan record/);
  });
});
describe('what a rig lacks', () => {
  it('is told and skipped', () => {
    expect(skipReason({ kind: 'check', check: 'far', chance: 1, cost: 1 }, testRig(), lookUp)).toMatch(
      /lacks the tap moonlight/,
    );
    expect(skipReason({ kind: 'check', check: 'near', chance: 1, cost: 1 }, testRig(), lookUp)).toBeNull();
  });
});
describe('the summary', () => {
  const summary = (...outcomes: PlanOutcome[]) =>
    planSummary(plan, after(...outcomes), (key) => lookUp(key)?.title ?? key);
  it('is ready only when every item passed', () => {
    const all = summary(done('far', 'pass'), done('near', 'pass'), done('also-near', 'pass'));
    expect([all.standing, all.sentence]).toEqual(['ready', 'Ready: all 3 items passed.']);
    expect(summary(done('far', 'pass'), done('near', 'pass')).standing).toBe('not settled');
  });
  it('is not settled with one undecided and not ready with one Fail', () => {
    const rest = [done('near', 'undecided'), done('also-near', 'pass')];
    expect(summary(done('far', 'pass'), ...rest).standing).toBe('not settled');
    expect(summary(done('far', 'fail'), ...rest).standing).toBe('not ready');
  });
  it('puts the worst first: Fail, trip, Undecided, Not measured, Pass', () => {
    const { outcomes, sentence } = summary(
      done('near', 'not measured', { ending: 'tripped' }),
      done('also-near', 'undecided'),
      done('far', 'fail'),
    );
    expect(keysOf(outcomes)).toEqual(['far', 'near', 'also-near']);
    expect(sentence).toBe('Not ready: Title of far. far fail');
  });
  const keysOf = (outcomes: readonly PlanOutcome[]) => outcomes.map(({ key }) => key);
});
describe('the eight plans', () => {
  it('have ids of their own that no check has', () => {
    const ids = [...plans.map(({ id }) => id), ...checks.map(({ id }) => id)];
    expect(new Set(ids).size).toBe(ids.length);
    expect(plans).toHaveLength(8);
  });
  it.each(plans)('$id names only checks and items that exist', (each) => {
    for (const one of each.items) {
      if (one.kind === 'check') expect(checkById(one.check), one.check).toBeDefined();
      for (const before of one.after ?? []) expect(keys(each.items)).toContain(before);
    }
  });
  it.each(plans)('$id can be put in order and looks at the pack before it powers anything', (each) => {
    const ordered = keys(orderedItems(each, checkById));
    expect(ordered).toHaveLength(each.items.length);
    const live = ordered.findIndex((key) => checkById(key)?.needs.outputs.includes('feed'));
    if (live >= 0) expect(ordered.indexOf('rest-voltage')).toBeLessThan(live);
  });
  it.each(['first-power-up', 'whole-car', 'between-rounds', 'after-crash'])(
    '%s leaves the motor in the car',
    (id) => {
      const wiring = planById(id)!.items.flatMap((one) =>
        one.kind === 'check' ? checkById(one.check)!.wiring : [],
      );
      expect(
        wiring.map(({ words }) => words).filter((words) => /[Cc]lamp the bare motor/.test(words)),
      ).toEqual([]);
    },
  );
  it.each(['parts-before-soldering', 'motor-before-race'])('%s measures the winding cold', (id) => {
    const ordered = keys(orderedItems(planById(id)!, checkById));
    expect(ordered.indexOf('winding-balance')).toBeLessThan(ordered.indexOf('motor-no-load'));
  });
  it('still ask for the throttle range where the motor is in its stand', () =>
    expect(keys(planById('motor-before-race')!.items)).toContain('throttle-range'));
  it.each(plans.filter(({ withinS }) => withinS !== undefined))('$id fits its minutes', (each) => {
    expect(secondsLeft(each, after(), checkById)).toBeLessThan(each.withinS!);
  });
});
