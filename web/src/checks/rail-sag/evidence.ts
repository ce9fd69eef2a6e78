// SPDX-License-Identifier: MIT
// What the procedure of rail-sag keeps: load steps as stretches of rig time, bursts sample by sample.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

export const burstSchema = z.object({
  tap: z.string(),
  startS: z.number(),
  intervalS: z.number(),
  actionSample: z.number().nullable(),
  /** Raw codes of single conversions; null where a block was lost. */
  codes: z.array(z.number().nullable()),
});
export const evidenceSchema = z.object({
  rest: stretchSchema,
  steps: z.array(z.object({ mask: z.number(), loaded: stretchSchema, free: stretchSchema })),
  loadBursts: z.array(burstSchema),
  servoBursts: z.array(burstSchema),
});
export type KeptBurst = z.infer<typeof burstSchema>;
export type Evidence = z.infer<typeof evidenceSchema>;
