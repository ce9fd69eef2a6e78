// SPDX-License-Identifier: MIT
// Documents that `npm run study -- --json` wrote, read again to be summed up together. It runs nothing.
import { z } from 'zod';
import { BadUsage } from './bad-usage.ts';
import { readJsonFile } from './json-file.ts';
import type { CellOutcome } from './study-run.ts';

const advice = 'Give files that `npm run study -- --json` wrote.';
const word = z.enum(['pass', 'fail', 'undecided', 'not measured']);
const resultSchema = z.object({
  id: z.string(),
  unit: z.string(),
  verdict: z.string(),
  value: z.number().nullable(),
  interval: z.tuple([z.number(), z.number()]).nullable(),
  truth: z.number().nullable(),
  placed: z.object({ atLimit: z.array(word), inside: z.array(word) }).nullable(),
  largest: z.object({ source: z.string(), share: z.number() }).nullable().default(null),
});
const outcomeSchema = z.object({
  check: z.string(),
  seed: z.number(),
  faults: z.record(z.string(), z.number()),
  verdict: z.string(),
  ending: z.string(),
  reason: z.string(),
  results: z.array(resultSchema),
  calibrated: z.boolean().default(false),
  rigS: z.number(),
  wallS: z.number(),
});
const documentSchema = z.object({
  date: z.string(),
  solved: z.boolean(),
  outcomes: z.array(outcomeSchema).min(1),
});
export interface PooledStudies {
  /** Of the first and the last. */
  readonly dates: readonly [string, string];
  readonly solved: boolean;
  readonly outcomes: readonly CellOutcome[];
}
/** Throws BadUsage: unreadable, of another kind than the others, or one cell twice. */
export function readStudies(paths: readonly string[]): PooledStudies {
  const documents = paths.map(readStudy);
  const [{ solved }] = documents;
  if (documents.some((other) => other.solved !== solved))
    throw new BadUsage('badStudy', 'Solved and emulated runs can not be pooled. Give files of one kind.');
  const outcomes = documents.flatMap((document) => document.outcomes);
  refuseTwice(outcomes);
  const dates = documents.map(({ date }) => date).toSorted();
  return { dates: [dates[0], dates[dates.length - 1]], solved, outcomes };
}
function readStudy(path: string) {
  const parsed = documentSchema.safeParse(
    readJsonFile(path, { what: 'study', flag: '--pool', code: 'badStudy', advice }),
  );
  if (parsed.success) return parsed.data;
  const [{ path: at, message }] = parsed.error.issues;
  throw new BadUsage(
    'badStudy',
    `${path} is no study: ${at.join('.') || 'the whole'}: ${message}. ${advice}`,
  );
}
function refuseTwice(outcomes: readonly CellOutcome[]): void {
  const seen = new Set<string>();
  for (const { check, seed, faults, calibrated } of outcomes) {
    const cell = JSON.stringify([check, seed, faults, calibrated]);
    if (seen.has(cell))
      throw new BadUsage(
        'badStudy',
        `${check} with seed ${seed} is in these files twice. Give each study once.`,
      );
    seen.add(cell);
  }
}
