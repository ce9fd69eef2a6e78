// SPDX-License-Identifier: MIT
// A plan on the compiled firmware, front to back: stopped by hand in its second check, resumed there, nothing twice,
// inside its minutes.
import { expect, it } from 'vitest';
import { planById } from '#checks/plans/index';
import { emptyRecord } from '#checks/plans/plan-record';
import { planSummary } from '#checks/plans/summary';
import { openVirtual } from '#sim/harness/bench-place';
import type { PlanFile } from '#sim/harness/plan-file';
import { runPlan, type PlanManner } from '#sim/harness/plan-run';

const plan = planById('between-rounds')!;
const seed = 3;
const begun = (car: string): PlanFile => ({
  ...emptyRecord(plan.id, car, '2026-01-01T00:00:00.000Z'),
  runs: [],
});
const manner = (more: Partial<PlanManner> = {}): PlanManner => ({
  look: () => Promise.resolve('fine'),
  keep: () => {},
  tell: () => {},
  ...more,
});

it('goes on where it was stopped and ends ready within three minutes', async () => {
  const first = await openVirtual(seed);
  const stop = new AbortController();
  const kept: PlanFile[] = [];
  const interrupted = await runPlan(
    first,
    plan,
    begun(first.car.name),
    manner({
      signal: stop.signal,
      keep: (file) => kept.push(file),
      tell: (words) => words.includes('(rail-setting)') && stop.abort(),
    }),
  );
  await first.session.close();
  const keys = interrupted.outcomes.map(({ key, ending }) => [key, ending]);
  expect(keys).toEqual([
    ['by-finger', undefined],
    ['rest-voltage', 'done'],
    ['rail-setting', 'stopped'],
  ]);
  expect(kept).toHaveLength(3);
  const again = await openVirtual(seed);
  const whole = await runPlan(again, plan, JSON.parse(JSON.stringify(interrupted)) as PlanFile, manner());
  await again.session.close();
  expect(whole.runs.map(({ check }) => check)).toEqual([
    'rest-voltage',
    'rail-setting',
    'rail-setting',
    'servo-scrub',
  ]);
  const { standing, sentence, rigS, personS } = planSummary(plan, whole, (key) => key);
  expect(standing, sentence).toBe('ready');
  expect(rigS + personS).toBeLessThan(plan.withinS!);
});
