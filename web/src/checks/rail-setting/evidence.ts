// SPDX-License-Identifier: MIT
// What the procedure of rail-setting keeps: the rail at rest, and the pack with the load bank on.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = z.object({
  rest: stretchSchema,
  steps: z.array(z.object({ loaded: stretchSchema, free: stretchSchema })),
});
export type Evidence = z.infer<typeof evidenceSchema>;
