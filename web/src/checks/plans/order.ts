// SPDX-License-Identifier: MIT
// In what order a plan is worked through: next comes what brings most a second, chance of a fault times its cost over
// the time it takes, wiring that is not yet made included. So shared wiring is made once and what hangs on it
// follows. Pure; it knows items and checks, no rig.
import type { Check, WiringStep } from '../check.ts';
import { keyOf, type Plan, type PlanItem } from './plan.ts';

/** What a person needs for one step, s; common practice, no source. */
export const personS = { wiring: 15, hold: 3, ask: 6 } as const;
/** What a plan has to know of a check. */
export type PlanCheck = Pick<Check, 'title' | 'durationS' | 'wiring' | 'needs'>;
export type Checks = (id: string) => PlanCheck | undefined;

/** One piece of wiring goes by its words: shared ones stand in wiring.ts. */
export const wiringKey = ({ words }: Pick<WiringStep, 'words'>): string => words;
export function newWiring(wiring: readonly WiringStep[], made: ReadonlySet<string>): readonly WiringStep[] {
  return wiring.filter((step) => !made.has(wiringKey(step)));
}
/** Seconds of rig and person for an item, given the wiring that is made. */
export function itemSeconds(item: PlanItem, made: ReadonlySet<string>, checks: Checks): number {
  if (item.kind === 'look') return item.seconds;
  const check = checks(item.check);
  if (!check) return 0;
  return check.durationS + personS.hold + personS.wiring * newWiring(check.wiring, made).length;
}
/** All items once. Throws RangeError where `after` names a stranger or goes in a circle. */
export function orderedItems({ id, items }: Plan, checks: Checks): readonly PlanItem[] {
  const left = [...items];
  const done = new Set<string>();
  const made = new Set<string>();
  const ordered: PlanItem[] = [];
  while (left.length > 0) {
    const free = left.filter(({ after = [] }) => after.every((key) => done.has(key)));
    if (free.length === 0) throw new RangeError(`the plan "${id}" goes in a circle`);
    const worth = (item: PlanItem) => (item.chance * item.cost) / itemSeconds(item, made, checks);
    const next = free.reduce((best, item) => (worth(item) > worth(best) ? item : best));
    left.splice(left.indexOf(next), 1);
    ordered.push(next);
    done.add(keyOf(next));
    for (const step of wiringOf(next, checks)) made.add(wiringKey(step));
  }
  return ordered;
}
const wiringOf = (item: PlanItem, checks: Checks): readonly WiringStep[] =>
  item.kind === 'check' ? (checks(item.check)?.wiring ?? []) : [];
