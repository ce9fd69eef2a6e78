// SPDX-License-Identifier: MIT
// What the procedure of rail-sag keeps: load steps as stretches of rig time, bursts sample by sample.
import { z } from 'zod';
import { burstSchema } from '../burst-wave.ts';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = z.object({
  rest: stretchSchema,
  steps: z.array(z.object({ mask: z.number(), loaded: stretchSchema, free: stretchSchema })),
  loadBursts: z.array(burstSchema),
  servoBursts: z.array(burstSchema),
});
export type Evidence = z.infer<typeof evidenceSchema>;
