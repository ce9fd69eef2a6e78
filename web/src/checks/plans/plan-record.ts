// SPDX-License-Identifier: MIT
// How far a plan has come: one outcome an item, written after each, so that an interruption costs at most the item
// it fell into. Schema version 1. The runs themselves are records of their own.
import { z } from 'zod';

export const planRecordFormat = 'bench plan record';
const outcome = z.object({
  key: z.string().min(1),
  /** ISO 8601, the computer's clock. */
  at: z.string(),
  kind: z.enum(['check', 'look', 'skipped']),
  verdict: z.enum(['pass', 'fail', 'undecided', 'not measured']),
  /** How the run of a check ended. */
  ending: z.enum(['done', 'stopped', 'tripped', 'link lost', 'failed']).optional(),
  /** What there is to say of it: the result that decided, why it was skipped, what was seen. */
  words: z.string(),
  /** Id of the run's record. */
  runId: z.string().optional(),
  rigS: z.number().min(0).optional(),
  /** What a person needed, reckoned from wiring, questions and holds. */
  personS: z.number().min(0).optional(),
});
export const planRecordSchema = z.object({
  format: z.literal(planRecordFormat, { error: 'this is no plan record of the bench' }),
  version: z.literal(1, { error: 'a plan record of another version' }),
  plan: z.string().min(1),
  car: z.string().min(1),
  startedAt: z.string(),
  outcomes: z.array(outcome),
});
export type PlanOutcome = z.infer<typeof outcome>;
export type PlanRecord = z.infer<typeof planRecordSchema>;

export const emptyRecord = (plan: string, car: string, startedAt: string): PlanRecord => ({
  format: planRecordFormat,
  version: 1,
  plan,
  car,
  startedAt,
  outcomes: [],
});
/** A later outcome of the same item stands in place of the earlier one. */
export const withOutcome = (record: PlanRecord, added: PlanOutcome): PlanRecord => ({
  ...record,
  outcomes: [...record.outcomes.filter(({ key }) => key !== added.key), added],
});
