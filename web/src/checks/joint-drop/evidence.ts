// SPDX-License-Identifier: MIT
// What the procedure of joint-drop keeps: one step of the pack load for each joint.
import { z } from 'zod';
import { loadStepSchema } from '../four-wire.ts';

export const evidenceSchema = z.object({
  steps: z.array(z.object({ number: z.int().positive(), step: loadStepSchema })),
});
export type Evidence = z.infer<typeof evidenceSchema>;
