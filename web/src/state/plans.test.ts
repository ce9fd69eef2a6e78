// SPDX-License-Identifier: MIT
// Plans on the page: what is kept, what a run joins, where an interrupted one goes on, the sentence at the end.
import { describe, expect, it } from 'vitest';
import { checkById } from '#checks/index';
import { planById } from '#checks/plans/index';
import type { LookItem } from '#checks/plans/plan';
import type { RunEnd } from '#checks/plans/outcomes';
import { newShelf } from '#core/parts/shelf';
import { testRig } from '#core/samples/scan-block-fixture';
import { checkCard } from '../worker/rig-words.ts';
import { Plans, type PlanTools } from './plans.svelte.ts';
import { marmot } from './shelf.svelte.ts';

const plan = planById('between-rounds')!;
const whole: PlanTools['bench'] = { check: (id) => cardOf(id), rig: null };
const cardOf = (id: string) => {
  const check = checkById(id);
  return check && checkCard(check);
};
function page({ memory = new Map<string, string>(), bench = whole, car = marmot } = {}) {
  const tools = {
    bench,
    shelf: { car, content: newShelf(car) },
    memory: {
      getItem: (key: string) => memory.get(key) ?? null,
      setItem: (key: string, v: string) => void memory.set(key, v),
    },
    now: () => Date.parse('2026-11-27T18:00:00Z'),
  };
  return { plans: new Plans(tools), memory };
}
const passed: RunEnd = { verdict: 'pass', ending: 'done', words: 'passed', rigS: 9 };
const ran = (check: string, end: Partial<RunEnd> = {}) => ({
  runId: `run of ${check}`,
  check,
  car: marmot.name,
  end: { ...passed, ...end },
  asked: 1,
});
const next = (plans: Plans) => plans.view(plan).next?.key;
const look = plan.items.find((item) => item.kind === 'look') as LookItem;
/** Goes through the plan from its start; every look fine, every run as told. */
function walk(plans: Plans, ends: Readonly<Record<string, Partial<RunEnd>>> = {}): string[] {
  plans.start(plan);
  const seen: string[] = [];
  for (let key = next(plans); key && seen.length < 20; key = next(plans)) {
    seen.push(key);
    if (key === look.id) plans.look(plan, look, 'fine');
    else plans.ended(ran(key, ends[key]));
  }
  return seen;
}

describe('a plan on the page', () => {
  it('begins anew where what was kept is damaged', () => {
    const damaged = new Map([['plans', '{"Marmot":{"leading":3}}']]);
    expect(page({ memory: damaged }).plans.leading).toBeNull();
  });
  it('takes no run before it was started, none of another car, none of a check it does not have', () => {
    const { plans } = page();
    plans.ended(ran('rest-voltage'));
    expect(plans.view(plan).begun).toBe(false);
    plans.start(plan);
    plans.look(plan, look, 'fine');
    plans.ended({ ...ran('rest-voltage'), car: 'Vole' });
    plans.ended(ran('motor-no-load'));
    expect(plans.view(plan).over).toBe(1);
    plans.ended(ran('rest-voltage'));
    expect(plans.view(plan).over).toBe(2);
  });
  it('takes no run out of its order', () => {
    const { plans } = page();
    plans.start(plan);
    plans.look(plan, look, 'fine');
    plans.ended(ran('servo-scrub'));
    expect(plans.view(plan).over).toBe(1);
  });
  it('leads through every item once, and ends with a sentence', () => {
    const { plans } = page();
    expect(walk(plans).toSorted()).toEqual(
      plan.items.map((item) => (item.kind === 'check' ? item.check : item.id)).toSorted(),
    );
    expect(plans.view(plan).summary?.sentence).toBe('Ready: all 4 items passed.');
    expect(plans.askingFor('rest-voltage')).toBeNull();
  });
  it('puts the worst thing first', () => {
    const { plans } = page();
    walk(plans, {
      'servo-scrub': { verdict: 'undecided', words: 'u' },
      'rail-setting': { verdict: 'fail', words: 'Rail is 5 V.' },
    });
    expect(plans.view(plan).summary).toMatchObject({
      standing: 'not ready',
      sentence: `Not ready: ${checkById('rail-setting')!.title}. Rail is 5 V.`,
    });
  });
  it('goes on after a reload at the run that was stopped', () => {
    const { plans, memory } = page();
    plans.start(plan);
    plans.look(plan, look, 'fine');
    plans.ended(
      ran('rest-voltage', { verdict: 'not measured', ending: 'stopped', words: 'Stopped by hand.' }),
    );
    const later = page({ memory }).plans;
    expect(later.leading?.id).toBe(plan.id);
    expect(next(later)).toBe('rest-voltage');
    expect(later.view(plan)).toMatchObject({ over: 1, begun: true, summary: null });
    expect(page({ memory, car: { ...marmot, name: 'Vole' } }).plans.view(plan).begun).toBe(false);
  });
  it('kept by name goes on under the identity of its car, whatever that is called next', () => {
    const { plans, memory } = page();
    plans.start(plan);
    const begun = (car: typeof marmot) => page({ memory, car }).plans.view(plan).begun;
    expect(begun({ ...marmot, id: 'c1' })).toBe(true);
    const known = page({ memory, car: { ...marmot, id: 'c1' } }).plans;
    known.goOn(plan);
    expect(begun({ ...marmot, id: 'c1', name: 'Vole' })).toBe(true);
    expect(begun({ ...marmot, id: 'c2' })).toBe(false);
  });
  it('is not stuck at what tripped or was left out, and does not call it done', () => {
    const { plans } = page();
    walk(plans, { 'rail-setting': { verdict: 'not measured', ending: 'tripped', words: 'Tripped.' } });
    expect(plans.view(plan)).toMatchObject({ over: 3, next: null });
    expect(plans.view(plan).summary?.standing).toBe('not settled');
    plans.leaveOut(plan, 'rail-setting');
    expect(plans.view(plan).summary?.sentence).toMatch(/Left out by hand/);
    plans.ended(ran('rail-setting'));
    expect(plans.view(plan).summary?.standing).toBe('ready');
  });
  it('asks for wiring that is new only, and counts it once', () => {
    const { plans } = page();
    expect(plans.newWiring('rest-voltage')).toBeNull();
    plans.start(plan);
    plans.look(plan, look, 'fine');
    expect(plans.newWiring('rest-voltage')).toHaveLength(checkById('rest-voltage')!.wiring.length);
    plans.ended(ran('rest-voltage'));
    plans.ended(ran('rail-setting'));
    expect(plans.newWiring('servo-scrub')!.length).toBeLessThan(checkById('servo-scrub')!.wiring.length);
  });
  it('says what the rig lacks and leaves it out', () => {
    const bare = {
      ...whole,
      rig: { description: testRig() } as unknown as NonNullable<PlanTools['bench']['rig']>,
    };
    const { plans } = page({ bench: bare });
    expect(walk(plans)).toEqual([look.id, 'rest-voltage']);
    expect(plans.view(plan).items.find(({ key }) => key === 'rail-setting')?.cannot).toMatch(
      /^The rig .* lacks the output/,
    );
    expect(plans.view(plan).summary?.standing).toBe('not settled');
  });
  it('warns before power where what comes first was not fine', () => {
    const crash = planById('after-crash')!;
    const { plans } = page();
    plans.start(crash);
    const skin = crash.items.find((item) => item.kind === 'look' && item.id === 'pack-skin') as LookItem;
    plans.look(crash, skin, 'not fine');
    expect(plans.view(crash).items.find(({ key }) => key === 'rest-voltage')?.heldBy).toMatch(/not fine/);
  });
});
