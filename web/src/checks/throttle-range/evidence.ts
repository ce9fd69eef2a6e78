// SPDX-License-Identifier: MIT
// What the procedure of throttle-range keeps: steady stretches over the travel, and what speed full brake takes in a
// third of a second against what coasting takes.
import { z } from 'zod';
import { provenSchema } from '../proven-spin.ts';
import { stretchSchema } from '../stretch.ts';

/** Speed just before, and a third of a second after. */
export const slowingSchema = z.object({ before: stretchSchema, later: stretchSchema });
export const evidenceSchema = provenSchema.extend({
  /** Shares of the travel, 0 to 1. */
  points: z.array(z.object({ throttle: z.number(), stretch: stretchSchema })),
  coast: slowingSchema.nullable(),
  brake: slowingSchema.nullable(),
});
export type Evidence = z.infer<typeof evidenceSchema>;
export type Slowing = z.infer<typeof slowingSchema>;
