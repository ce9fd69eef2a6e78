// SPDX-License-Identifier: MIT
// What the procedure of timing-sweep keeps for its analysis: degrees that the person read, stretches of rig time.
import { z } from 'zod';
import { provenSchema } from '../proven-spin.ts';
import { stretchSchema } from '../stretch.ts';

export const markSchema = provenSchema.extend({
  /** Electrical degrees of advance as the end bell says. */
  degrees: z.number(),
  idle: stretchSchema,
  /** 75 % and full throttle, as motor-no-load reads them; none where the first spin was not proven. */
  steps: z.array(z.object({ throttle: z.number(), stretch: stretchSchema })),
});
export const evidenceSchema = z.object({
  /** In the order they were run; the last one is the first mark again. */
  marks: z.array(markSchema),
});
export type Mark = z.infer<typeof markSchema>;
export type Evidence = z.infer<typeof evidenceSchema>;
