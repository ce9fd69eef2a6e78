// SPDX-License-Identifier: MIT
// What there is to run: checks, plans, faults. It runs nothing.
import type { Check } from '#checks/check';
import { checkById, checks } from '#checks/index';
import { planById, plans } from '#checks/plans/index';
import { secondsLeft } from '#checks/plans/progress';
import { keyOf, type Plan } from '#checks/plans/plan';
import { faultTable } from '#sim/faults/faults';
import { BadUsage } from './bad-usage.ts';
import { table } from './run-table.ts';

const idsOf = (all: readonly { readonly id: string }[]): string => all.map(({ id }) => id).join(', ');
const unknown = (id: string): BadUsage =>
  new BadUsage(
    'unknownCheck',
    `There is no check or plan "${id}". Known checks: ${idsOf(checks)}. Plans: ${idsOf(plans)}.`,
  );
/** Throws BadUsage that lists the known ones. */
export function findCheck(id: string): Check {
  const found = checkById(id);
  if (!found) throw unknown(id);
  return found;
}
/** A check or a plan. Throws BadUsage that lists the known ones. */
export function findRunnable(id: string): Check | Plan {
  const found = checkById(id) ?? planById(id);
  if (!found) throw unknown(id);
  return found;
}
export const isPlan = (found: Check | Plan): found is Plan => 'items' in found;
export const catalogDocument = () => ({
  checks: checks.map(({ id, title, needs }) => ({ id, title, needs })),
  plans: plans.map((plan) => ({
    id: plan.id,
    title: plan.title,
    items: plan.items.map(keyOf),
    aboutS: Math.round(secondsLeft(plan, { outcomes: [] }, checkById)),
  })),
  faults: faultTable.map(({ name, words, severity, check, verdict }) => ({
    name,
    words,
    severity,
    check,
    verdict,
  })),
});
export function catalogText(): string {
  const rows = checks.map(({ id, title, needs }) => [id, title, needs.taps.join(' ')]);
  const planRows = plans.map(({ id, title, items }) => [id, title, items.map(keyOf).join(' ')]);
  const faults = faultTable.map(({ name, check, words }) => [name, check, words]);
  return [
    ...table([['check', 'what it does', 'taps it needs'], ...rows]),
    '',
    ...table([['plan', 'for', 'items'], ...planRows]),
    '',
    ...table([['fault', 'seen by', 'what is wrong'], ...faults]),
    '',
  ].join('\n');
}
