// SPDX-License-Identifier: MIT
// Summaries as earlier versions of the page kept them, brought up to today's form: what they lack is read from the
// record beside them, or stays missing where there is none. Pure; the logbook keeps what comes out.
import { z } from 'zod';
import { openRun } from './opened-run.ts';
import { runSummarySchema, summaryForm, type RunSummary } from './run-summary.ts';

/** Form 1 had no number: no u, no budget, no number of the rig. Form 2 had no identities, nor had its records. */
const olderSchema = runSummarySchema.extend({ form: z.literal(2).optional() });

export type KeptSummary =
  | { readonly kind: 'today'; readonly summary: RunSummary }
  | { readonly kind: 'older'; readonly id: string }
  | { readonly kind: 'damaged' };

export function readSummary(kept: unknown): KeptSummary {
  const today = runSummarySchema.safeParse(kept);
  if (today.success) return { kind: 'today', summary: today.data };
  const older = olderSchema.safeParse(kept);
  return older.success ? { kind: 'older', id: older.data.id } : { kind: 'damaged' };
}
/** `record` is its text, or anything else where none was kept. */
export function migrated(kept: unknown, record: unknown): RunSummary {
  const older = olderSchema.parse(kept);
  const plain = { ...older, form: summaryForm } as const;
  if (older.form === 2 || typeof record !== 'string') return plain;
  try {
    const naming = { title: older.checkTitle, part: older.part, rig: older.rig };
    const { summary } = openRun(record, naming);
    return { ...summary, endedAt: older.endedAt };
  } catch {
    return plain;
  }
}
