// SPDX-License-Identifier: MIT
// The end of a plan in one sentence and a list with the worst thing first. A car is ready only when every item
// passed; one Fail makes it not ready; all else leaves it not settled. Pure.
import type { Plan } from './plan.ts';
import { keyOf } from './plan.ts';
import type { PlanOutcome, PlanRecord } from './plan-record.ts';

export type Standing = 'ready' | 'not ready' | 'not settled';
export interface PlanSummary {
  readonly standing: Standing;
  readonly sentence: string;
  /** Every item with an outcome, the worst first. */
  readonly outcomes: readonly PlanOutcome[];
  /** Keys of items without an outcome. */
  readonly open: readonly string[];
  readonly rigS: number;
  readonly personS: number;
}
const rank: Readonly<Record<PlanOutcome['verdict'], number>> = {
  fail: 0,
  undecided: 2,
  'not measured': 3,
  pass: 4,
};
/** A trip ranks right behind a Fail. */
const severity = ({ verdict, ending }: PlanOutcome): number => (ending === 'tripped' ? 1 : rank[verdict]);

export function planSummary(plan: Plan, record: PlanRecord, titleOf: (key: string) => string): PlanSummary {
  const cost = (key: string) => plan.items.find((item) => keyOf(item) === key)?.cost ?? 0;
  const outcomes = record.outcomes.toSorted((a, b) => severity(a) - severity(b) || cost(b.key) - cost(a.key));
  const open = plan.items.map(keyOf).filter((key) => !outcomes.some((outcome) => outcome.key === key));
  const standing = standingOf(outcomes, open);
  const sum = (of: 'rigS' | 'personS') => outcomes.reduce((total, outcome) => total + (outcome[of] ?? 0), 0);
  const sentence = sentenceOf(standing, outcomes, open, titleOf);
  return { standing, sentence, outcomes, open, rigS: sum('rigS'), personS: sum('personS') };
}
function standingOf(outcomes: readonly PlanOutcome[], open: readonly string[]): Standing {
  if (outcomes.some(({ verdict }) => verdict === 'fail')) return 'not ready';
  return open.length === 0 && outcomes.every(({ verdict }) => verdict === 'pass') ? 'ready' : 'not settled';
}
function sentenceOf(
  standing: Standing,
  outcomes: readonly PlanOutcome[],
  open: readonly string[],
  titleOf: (key: string) => string,
): string {
  const passed = outcomes.filter(({ verdict }) => verdict === 'pass').length;
  if (standing === 'ready') return `Ready: all ${passed} items passed.`;
  const head = standing === 'not ready' ? 'Not ready' : 'Not settled';
  const worst = outcomes.find(({ verdict }) => verdict !== 'pass');
  if (!worst) return `${head}: ${passed} passed, ${open.length} still to do.`;
  return `${head}: ${titleOf(worst.key)}. ${worst.words}`;
}
