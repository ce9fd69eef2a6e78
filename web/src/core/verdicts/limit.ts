// SPDX-License-Identifier: MIT
// A limit is data: how much, of what kind, from where, what it stands in place of. It never stands without its
// source. The schema guards limits that come back from files.
import { z } from 'zod';
import { firstRunsSchema } from './first-runs-schema.ts';

export const limitKinds = ['rating', 'baseline', 'common practice', 'published', 'own override'] as const;
export type LimitKind = (typeof limitKinds)[number];
/** How well a limit itself is known, when it was carried from another condition by a model. */
const doubtSchema = z.object({
  words: z.string().min(1),
  /** Standard uncertainty as a share of each bound; taken as a rectangle's. */
  share: z.number().positive(),
});
export const limitSchema = z.object({
  min: z.number().optional(),
  max: z.number().optional(),
  unit: z.string(),
  kind: z.enum(limitKinds),
  /** For people: "label of the motor, at 7.4 V", "common practice, no source". */
  source: z.string().min(1, 'a limit needs its source'),
  /** Beyond this the verdict stays Pass, with a note to watch it. */
  warnMin: z.number().optional(),
  warnMax: z.number().optional(),
  doubt: doubtSchema.optional(),
  /** Of a baseline: what the rig of the first runs was off by, so that what it still is falls out. */
  firstRuns: firstRunsSchema.optional(),
  /** Limits that this one stands in place of, nearest first, in words. */
  displaced: z.array(z.string()).readonly().optional(),
  /** What would have gone before this one but could not be used, and why. */
  refused: z.array(z.string()).readonly().optional(),
});
export type Limit = Readonly<z.infer<typeof limitSchema>>;
export type VerdictWord = 'pass' | 'fail' | 'undecided' | 'not measured';
/** A finding held against its limit. A finding without a limit informs and has verdict 'pass' only as information. */
export interface Judged {
  readonly id: string;
  readonly limit?: Limit;
  readonly verdict: VerdictWord;
  /** For 'undecided': what would settle it, in numbers. For a watch level: the note. */
  readonly note?: string;
}
