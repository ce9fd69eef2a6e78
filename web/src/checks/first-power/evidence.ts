// SPDX-License-Identifier: MIT
// What the procedure of first-power keeps: stretches of rig time, and how far it came before something was wrong.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = z.object({
  /** The pack before anything is switched on. */
  rest: stretchSchema,
  /** Below 0.2 V at the controller side; null: the pack was refused, or it would not empty. */
  empty: stretchSchema.nullable(),
  emptied: z.boolean(),
  /** From just before the limited feed closed; null: it was never closed. */
  charge: stretchSchema.nullable(),
  /** The end of the charge, where only a leak is left. */
  filled: stretchSchema.nullable(),
  /** Standby with the full feed; null: the feed was opened before. */
  standby: stretchSchema.nullable(),
});
export type Evidence = z.infer<typeof evidenceSchema>;
