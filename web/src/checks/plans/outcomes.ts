// SPDX-License-Identifier: MIT
// What an item of a plan came to, for the plan's record: from a look's answer, from a run's record, from a reason to
// skip. The verdict is the run's own; nothing is judged here. Pure.
import { reasonOf } from '#core/record/run-reason';
import type { RunRecord } from '#core/record/run-record';
import { personS } from './order.ts';
import type { LookItem } from './plan.ts';
import type { PlanOutcome } from './plan-record.ts';

export type LookAnswer = 'fine' | 'not fine' | 'not looked at';
const looked = { fine: 'pass', 'not fine': 'fail', 'not looked at': 'not measured' } as const;

/** `at`: ISO 8601. */
export const lookOutcome = (
  { id, words, seconds }: LookItem,
  answer: LookAnswer,
  at: string,
): PlanOutcome => ({
  key: id,
  at,
  kind: 'look',
  verdict: looked[answer],
  words: `${words} ${answer}.`,
  personS: seconds,
});
export const skippedOutcome = (key: string, words: string, at: string): PlanOutcome => ({
  key,
  at,
  kind: 'skipped',
  verdict: 'not measured',
  words,
});
/** How a run ended, as a plan tells it. */
export interface RunEnd {
  readonly verdict: PlanOutcome['verdict'];
  readonly ending: RunRecord['ending']['kind'];
  readonly words: string;
  /** Rig time from the run's start to its last event, which is the way back to safe, s. */
  readonly rigS: number;
}
export const runEnd = (record: RunRecord): RunEnd => ({
  verdict: record.verdict,
  ending: record.ending.kind,
  words: reasonOf(record) ?? 'passed',
  rigS: Math.max(0, ...record.events.map(({ atS }) => atS)),
});
interface Done {
  readonly check: string;
  readonly runId: string;
  readonly at: string;
  /** Pieces that had to be plugged for it, and hands or figures that it asked for. */
  readonly wiring: number;
  readonly asked: number;
}
export const checkOutcome = (end: RunEnd, { check, runId, at, wiring, asked }: Done): PlanOutcome => ({
  key: check,
  at,
  kind: 'check',
  ...end,
  runId,
  personS: personS.hold + personS.wiring * wiring + personS.ask * asked,
});
