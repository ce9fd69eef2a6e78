// SPDX-License-Identifier: MIT
// What there is to run: checks, plans, faults. It runs nothing.
import { checks } from '#checks/index';
import type { Check } from '#checks/check';
import { faultTable } from '#sim/faults/faults';
import { BadUsage } from './bad-usage.ts';
import { table } from './run-table.ts';

/** Throws BadUsage that lists the known ones. */
export function findCheck(id: string): Check {
  const found = checks.find((check) => check.id === id);
  if (found) return found;
  throw new BadUsage(
    'unknownCheck',
    `There is no check or plan "${id}". Known checks: ${checks.map((check) => check.id).join(', ')}.`,
  );
}
export const catalogDocument = () => ({
  checks: checks.map(({ id, title, needs }) => ({ id, title, needs })),
  plans: [],
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
  const faults = faultTable.map(({ name, check, words }) => [name, check, words]);
  return [
    ...table([['check', 'what it does', 'taps it needs'], ...rows]),
    '',
    ...table([['fault', 'seen by', 'what is wrong'], ...faults]),
    '',
  ].join('\n');
}
