// SPDX-License-Identifier: MIT
// What the procedure of motor-no-load keeps for its analysis: stretches of rig time, nothing computed.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = z.object({
  /** False when the motor did not turn fast enough for the fail-safe test however far the throttle was opened. */
  turned: z.boolean(),
  /** How far it was opened for that, 0 to 1; records from before it grew lack it. */
  opening: z.number().optional(),
  /** Seconds from the end of the pulses until the speed fell; null when it did not fall. */
  failSafeS: z.number().nullable(),
  idle: stretchSchema,
  steps: z.array(z.object({ throttle: z.number(), stretch: stretchSchema })),
});
export type Evidence = z.infer<typeof evidenceSchema>;
