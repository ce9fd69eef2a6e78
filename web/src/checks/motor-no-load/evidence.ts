// SPDX-License-Identifier: MIT
// What the procedure of motor-no-load keeps for its analysis: stretches of rig time, nothing computed.
import { z } from 'zod';
import { provenSchema } from '../proven-spin.ts';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = provenSchema.extend({
  idle: stretchSchema,
  steps: z.array(z.object({ throttle: z.number(), stretch: stretchSchema })),
});
export type Evidence = z.infer<typeof evidenceSchema>;
