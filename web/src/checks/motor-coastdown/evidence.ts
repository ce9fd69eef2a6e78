// SPDX-License-Identifier: MIT
// What the procedure of motor-coastdown keeps for its analysis: stretches of rig time, nothing computed.
import { z } from 'zod';
import { provenSchema } from '../proven-spin.ts';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = provenSchema.extend({
  idle: stretchSchema,
  /** Full throttle, settled, and the run-down after it: from neutral until no edge came any more. */
  spins: z.array(z.object({ full: stretchSchema, coast: stretchSchema })),
});
export type Evidence = z.infer<typeof evidenceSchema>;
