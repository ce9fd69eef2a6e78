// SPDX-License-Identifier: MIT
// What of a plan is still to do on this rig, what is left out and why, which wiring is new, how long it takes. Pure.
import type { RigDescription } from '#core/samples/rig-description';
import type { WiringStep } from '../check.ts';
import { missingOf } from '../needs.ts';
import { itemSeconds, newWiring, orderedItems, wiringKey, type Checks, type PlanCheck } from './order.ts';
import { keyOf, type CheckItem, type Plan, type PlanItem } from './plan.ts';
import type { PlanOutcome, PlanRecord } from './plan-record.ts';

/** What was cut short (stop, trip, lost link) or skipped for want of a tap is to be tried again. */
const isOver = ({ kind, ending = 'done' }: PlanOutcome): boolean => kind !== 'skipped' && ending === 'done';

export function itemsLeft(
  plan: Plan,
  { outcomes }: Pick<PlanRecord, 'outcomes'>,
  checks: Checks,
): readonly PlanItem[] {
  const over = new Set(outcomes.filter(isOver).map(({ key }) => key));
  return orderedItems(plan, checks).filter((item) => !over.has(keyOf(item)));
}
/** Why this rig can't do an item; null where it can. */
export function skipReason({ check: id }: CheckItem, rig: RigDescription, checks: Checks): string | null {
  const check = checks(id);
  return check ? missingOf(check.needs, rig) : `The check ${id} is not known here.`;
}
/** Wiring made by the checks of a plan so far. */
export function wiringMade({ outcomes }: Pick<PlanRecord, 'outcomes'>, checks: Checks): ReadonlySet<string> {
  const run = outcomes.filter(({ kind }) => kind === 'check').flatMap(({ key }) => checks(key)?.wiring ?? []);
  return new Set(run.map(wiringKey));
}
/** What has to be plugged for a check that is not plugged yet. */
export const wiringFor = (check: PlanCheck, made: ReadonlySet<string>): readonly WiringStep[] =>
  newWiring(check.wiring, made);

/** Seconds of rig and person for what is left. */
export function secondsLeft(plan: Plan, record: Pick<PlanRecord, 'outcomes'>, checks: Checks): number {
  const made = new Set(wiringMade(record, checks));
  return itemsLeft(plan, record, checks).reduce((sum, item) => {
    const seconds = itemSeconds(item, made, checks);
    const wiring = item.kind === 'check' ? (checks(item.check)?.wiring ?? []) : [];
    for (const step of wiring) made.add(wiringKey(step));
    return sum + seconds;
  }, 0);
}
