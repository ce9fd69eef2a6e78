// SPDX-License-Identifier: MIT
// What the procedure of motor-no-load keeps for its analysis: stretches of rig time, nothing computed.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = z.object({
  /** False when no Hall edge came although the throttle was opened a little. */
  turned: z.boolean(),
  /** Seconds from the end of the pulses until the speed fell; null when it did not fall. */
  failSafeS: z.number().nullable(),
  idle: stretchSchema,
  steps: z.array(z.object({ throttle: z.number(), stretch: stretchSchema })),
});
export type Evidence = z.infer<typeof evidenceSchema>;
