// SPDX-License-Identifier: MIT
// What the procedure of servo-speed keeps: the quiet stretch, every move with its length, the horn's readings.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = z.object({
  idle: stretchSchema,
  moves: z.array(z.object({ lengthUs: z.number(), longer: z.boolean(), stretch: stretchSchema })),
  /** Null where the part already has its degrees per microsecond measured. */
  horn: z
    .object({
      shortDegrees: z.number(),
      longDegrees: z.number(),
      apartUs: z.number().positive(),
      /** Both ends once more; records from before lack it. */
      again: z.object({ shortDegrees: z.number(), longDegrees: z.number() }).optional(),
    })
    .nullable(),
});
export type Evidence = z.infer<typeof evidenceSchema>;
