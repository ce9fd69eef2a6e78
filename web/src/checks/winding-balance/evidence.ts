// SPDX-License-Identifier: MIT
// What the procedure of winding-balance keeps: one step of the pack load for each pair of phases.
import { z } from 'zod';
import { loadStepSchema } from '../four-wire.ts';

export const pairs = ['A and B', 'B and C', 'C and A'] as const;
export const evidenceSchema = z.object({
  steps: z.array(z.object({ pair: z.enum(pairs), step: loadStepSchema })),
});
export type Evidence = z.infer<typeof evidenceSchema>;
