// SPDX-License-Identifier: MIT
// In what order the checks are offered, and which one is next for a car. Ordered so that what the other checks
// stand on comes first: the rail feeds the servo, and neither needs the motor to turn.
import type { CheckCard } from '../worker/messages.ts';
import type { Car } from '#core/parts/part';
import { placeOf } from './chain-places.ts';
import { newestRuns } from './part-runs.ts';
import type { RunSummary } from './run-summary.ts';

const order = [
  'rail-sag',
  'servo-idle',
  'servo-stall',
  'motor-no-load',
  'rest-voltage',
  'first-power',
  'rail-setting',
  'pack-sag',
  'joint-drop',
  'radio-range',
  'failsafe',
  'servo-centre',
  'servo-end-points',
  'servo-scrub',
  'servo-no-load',
  'servo-speed',
  'sensor-cable',
  'throttle-range',
];
const rank = (check: CheckCard) => (order.indexOf(check.id) + order.length + 1) % (order.length + 1);

export function orderedChecks(checks: readonly CheckCard[]): CheckCard[] {
  return [...checks].sort((a, b) => rank(a) - rank(b));
}
export interface NextCheck {
  readonly check: CheckCard;
  readonly words: string;
}
/** The first check never ended on this car, else the one that did longest ago. */
export function nextCheck(
  checks: readonly CheckCard[],
  runs: readonly RunSummary[],
  car: Car,
): NextCheck | null {
  const newest = new Map(newestRuns(runs, checks, car).map((run) => [run.checkId, run.startedAt]));
  const last = (check: CheckCard) => newest.get(check.id) ?? '';
  const ordered = orderedChecks(checks).sort((a, b) => last(a).localeCompare(last(b)));
  const check = ordered[0];
  if (!check) return null;
  return {
    check,
    words: `Check the ${placeOf(check).title.toLowerCase()}${last(check) === '' ? '' : ' again'}`,
  };
}
