// SPDX-License-Identifier: MIT
// What the procedure of servo-no-load keeps: rests and slow sweeps of either way, and fast moves.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = z.object({
  idle: stretchSchema,
  sweeps: z.array(z.object({ longer: z.boolean(), stretch: stretchSchema })),
  moves: z.array(z.object({ longer: z.boolean(), stretch: stretchSchema })),
});
export type Evidence = z.infer<typeof evidenceSchema>;
