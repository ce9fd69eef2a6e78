// SPDX-License-Identifier: MIT
// What the procedure of servo-stall keeps: the quiet stretch and every push, in rig time.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = z.object({
  idle: stretchSchema,
  pushes: z.array(z.object({ degrees: z.number(), stretch: stretchSchema })),
});
export type Evidence = z.infer<typeof evidenceSchema>;
