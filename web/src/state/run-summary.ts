// SPDX-License-Identifier: MIT
// A run as the logbook lists it: what was checked, when, and each result with its verdict. The full record lies
// beside it. Read back through zod, because a browser's store may be older or damaged: older forms are brought up
// to this one by summary-migration.ts.
import { z } from 'zod';
import { identitySchema } from '#core/parts/identity';
import { partKinds } from '#core/parts/part';
import { limitSchema } from '#core/verdicts/limit';
import { figure, readingWords, shownUnit } from './figures.ts';

/** As the core's budget line; endless degrees of freedom are kept as null. */
const keptLineSchema = z.object({
  source: z.string(),
  u: z.number(),
  shape: z.enum(['normal', 'rectangular', 'student']),
  dof: z.number().nullable(),
  origin: z.string(),
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
  /** What it holds at, where that hangs on the car: the part's history keeps to one. */
  condition: z.string().optional(),
  /** Of a measured result: standard uncertainty and what it is made of, for the part's history. */
  u: z.number().optional(),
  budget: z.array(keptLineSchema).optional(),
});
export type ResultLine = z.infer<typeof resultLineSchema>;

/** 2: u, budget and the rig's number came along. 3: identities of part and car. */
export const summaryForm = 3;
export const runSummarySchema = z.object({
  form: z.literal(summaryForm),
  id: z.string(),
  startedAt: z.string(),
  /** Missing: the page closed while it ran. */
  endedAt: z.string().optional(),
  checkId: z.string(),
  checkTitle: z.string(),
  part: z.enum(partKinds),
  /** Names as they were then; identities are missing where nobody knows them. */
  car: z.string(),
  carId: identitySchema.optional(),
  partName: z.string(),
  partId: identitySchema.optional(),
  rig: z.string(),
  /** The rig's number, "virtual 7" for the virtual one of a seed, empty where none is set. Missing: never ended. */
  rigSerial: z.string().optional(),
  event: z.string().optional(),
  /** What a person wrote to it. */
  note: z.string().optional(),
  /** When a person deleted it, ISO 8601: it can be put back until it is deleted for good. */
  deletedAt: z.string().optional(),
  results: z.array(resultLineSchema),
});
export type RunSummary = z.infer<typeof runSummarySchema>;

/** "at most 3.4 A", "5 000 to 5 700 rpm/V". */
export function limitRange(limit: NonNullable<ResultLine['limit']>, size: number): string {
  const shown = shownUnit(limit.unit, size);
  const say = (x: number) => {
    const scaled = Number(shown.value(x).toPrecision(4));
    return figure(scaled, (String(Math.abs(scaled)).split('.')[1] ?? '').length);
  };
  const { min, max } = limit;
  if (min !== undefined && min === max) return `exactly ${say(min)}\u00a0${shown.unit}`;
  if (min !== undefined && max !== undefined) return `${say(min)} to ${say(max)}\u00a0${shown.unit}`;
  return max !== undefined
    ? `at most ${say(max)}\u00a0${shown.unit}`
    : `at least ${say(min ?? 0)}\u00a0${shown.unit}`;
}
/** With its kind: "at most 3.4 A, rating". */
export function limitWords(limit: NonNullable<ResultLine['limit']>, size: number): string {
  const kind = limit.kind === 'common practice' ? 'common practice, no source' : limit.kind;
  return `${limitRange(limit, size)}, ${kind}`;
}
/** The deciding value on a tag: short. */
/** The value, or why there is none, in a sentence. */
export function resultWords({ value, interval, unit, reason = 'No number was made.' }: ResultLine): string {
  if (value === undefined || !interval) return reason.split(/(?<=\.) /)[0];
  return readingWords(value, interval, unit);
}
/** The same where there is little room. */
export const resultDetail = (result: ResultLine): string =>
  result.value === undefined ? shortened(resultWords(result)) : resultWords(result);
const shortened = (text: string) => (text.length > 24 ? `${text.slice(0, 23).trimEnd()}…` : text);
