// SPDX-License-Identifier: MIT
// What the procedure of servo-heat keeps: the stretch of steady work, how long a race is, whether it got too hot.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = z.object({
  raceS: z.number(),
  working: stretchSchema,
  /** Ended early because the case came near its limit. */
  stoppedHot: z.boolean(),
});
export type Evidence = z.infer<typeof evidenceSchema>;
