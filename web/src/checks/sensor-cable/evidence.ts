// SPDX-License-Identifier: MIT
// What the procedure of sensor-cable keeps for its analysis: stretches of rig time, nothing computed.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = z.object({
  /** Turned by hand in the running direction; the second try where the order came out the other way round. */
  forward: stretchSchema,
  backward: stretchSchema,
  /** Turned on while the cable was moved. */
  moved: stretchSchema,
});
export type Evidence = z.infer<typeof evidenceSchema>;
