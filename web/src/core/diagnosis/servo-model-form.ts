// SPDX-License-Identifier: MIT
// The form of what was learnt of hot servos: how each feature spreads over servos in order, and over those of a cause
// where it differs. The schema guards the file.
import { z } from 'zod';
import { causeIds } from './causes.ts';
import { featureIds } from './features.ts';

const spreadSchema = z.object({ middle: z.number(), spread: z.number().positive() });
/** Of a cause: as it shows in this share of its servos; the others are as usual. */
const shownSchema = spreadSchema.extend({ shows: z.number().positive().max(1) });
const learntSchema = z.object({
  /** Servos in order, and those of every cause that is not named below. */
  usual: spreadSchema,
  causes: z.partialRecord(z.enum(causeIds), shownSchema),
});
export const servoModelSchema = z.object({
  date: z.string().min(1),
  command: z.string().min(1),
  /** Simulated servos it was learnt from, seeds from and to. */
  seeds: z.tuple([z.number(), z.number()]),
  cases: z.number(),
  /** All log likelihoods are taken times this: features of one servo are not independent. */
  temper: z.number().positive(),
  priors: z.record(z.enum(causeIds), z.number().positive()),
  features: z.record(z.enum(featureIds), learntSchema),
});
export type ServoModel = z.infer<typeof servoModelSchema>;
export type Spread = z.infer<typeof spreadSchema>;
export type Shown = z.infer<typeof shownSchema>;
