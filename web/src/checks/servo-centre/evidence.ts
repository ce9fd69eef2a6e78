// SPDX-License-Identifier: MIT
// What the procedure of servo-centre keeps: two readings of the horn, clockwise positive, and the stretch of the first.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = z.object({
  rest: stretchSchema,
  atCentreDegrees: z.number(),
  longerDegrees: z.number(),
  longerByUs: z.number().positive(),
});
export type Evidence = z.infer<typeof evidenceSchema>;
