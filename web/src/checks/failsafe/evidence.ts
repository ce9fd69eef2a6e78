// SPDX-License-Identifier: MIT
// What the procedure of failsafe keeps: the throttle channel in known positions, through the loss of the transmitter
// and through its return.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = z.object({
  /** False when the receiver rail did not come up. */
  powered: z.boolean(),
  known: z
    .object({ rest: stretchSchema, full: stretchSchema, half: stretchSchema })
    /** Begins when the person was asked. */
    .extend({ loss: stretchSchema, comeback: stretchSchema })
    /** When the person said that the transmitter went off. */
    .extend({ lostS: z.number() })
    .nullable(),
});
export type Evidence = z.infer<typeof evidenceSchema>;
export type Known = NonNullable<Evidence['known']>;
