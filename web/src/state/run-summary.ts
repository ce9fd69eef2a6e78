// SPDX-License-Identifier: MIT
// A run as the logbook lists it: what was checked, when, and each result with its verdict. The full record lies
// beside it. Read back through zod, because a browser's store may be older or damaged.
import { z } from 'zod';
import { readingWords, shownUnit, figure, decimalsFor } from './figures.ts';

const limitSchema = z.object({
  min: z.number().optional(),
  max: z.number().optional(),
  unit: z.string(),
  kind: z.enum(['rating', 'baseline', 'common practice', 'published']),
  source: z.string(),
  warnMin: z.number().optional(),
  warnMax: z.number().optional(),
});
export const resultLineSchema = z.object({
  id: z.string(),
  title: z.string(),
  unit: z.string(),
  verdict: z.enum(['pass', 'fail', 'undecided', 'not measured']),
  /** False for a result that only informs: it has no limit. */
  judged: z.boolean(),
  value: z.number().optional(),
  interval: z.tuple([z.number(), z.number()]).optional(),
  reason: z.string().optional(),
  note: z.string().optional(),
  limit: limitSchema.optional(),
});
export type ResultLine = z.infer<typeof resultLineSchema>;

export const runSummarySchema = z.object({
  id: z.string(),
  startedAt: z.string(),
  /** Missing: the page closed while it ran. */
  endedAt: z.string().optional(),
  checkId: z.string(),
  checkTitle: z.string(),
  part: z.enum(['motor', 'servo', 'controller', 'pack']),
  car: z.string(),
  partName: z.string(),
  rig: z.string(),
  event: z.string().optional(),
  results: z.array(resultLineSchema),
});
export type RunSummary = z.infer<typeof runSummarySchema>;

/** "at most 3.4 A, rating", "5 000 to 5 700 rpm/V, rating". */
export function limitWords(limit: NonNullable<ResultLine['limit']>, size: number): string {
  const shown = shownUnit(limit.unit, size);
  const span = Math.abs(limit.max ?? limit.min ?? 1) * shown.factor;
  const say = (x: number) => figure(x * shown.factor, Math.min(3, decimalsFor(span / 200)));
  const kind = limit.kind === 'common practice' ? 'common practice, no source' : limit.kind;
  const range =
    limit.min !== undefined && limit.max !== undefined
      ? `${say(limit.min)} to ${say(limit.max)}`
      : limit.max !== undefined
        ? `at most ${say(limit.max)}`
        : `at least ${say(limit.min ?? 0)}`;
  return `${range}\u00a0${shown.unit}, ${kind}`;
}
/** The deciding value on a tag: short. */
export function resultDetail(result: ResultLine): string {
  if (result.value === undefined || !result.interval) return shortened(result.reason ?? 'No number was made');
  return readingWords(result.value, result.interval, result.unit);
}
const shortened = (text: string) => (text.length > 24 ? `${text.slice(0, 23).trimEnd()}…` : text);
