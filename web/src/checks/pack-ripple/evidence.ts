// SPDX-License-Identifier: MIT
// What the procedure of pack-ripple keeps: neutral, the proven spin, half throttle, and the pack current sample by
// sample while it lasts.
import { z } from 'zod';
import { burstSchema } from '../burst-wave.ts';
import { provenSchema } from '../proven-spin.ts';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = provenSchema.extend({
  idle: stretchSchema,
  /** Null: the throttle was not opened. */
  half: stretchSchema.nullable(),
  bursts: z.array(burstSchema),
  /** The pack load going off behind an open feed, for the tap's own corner; records from before it lack it. */
  loadOff: z.array(burstSchema).optional(),
});
export type Evidence = z.infer<typeof evidenceSchema>;
