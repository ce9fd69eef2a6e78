// SPDX-License-Identifier: MIT
// What the procedure of motor-heat keeps for its analysis: stretches of rig time, nothing computed.
import { z } from 'zod';
import { provenSchema } from '../proven-spin.ts';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = provenSchema.extend({
  /** Everything at neutral, the motor as cold as the room. */
  idle: stretchSchema,
  /** Half throttle, then neutral; null where the first spin was not proven. */
  course: z.object({ heating: stretchSchema, cooling: stretchSchema }).nullable(),
});
export type Evidence = z.infer<typeof evidenceSchema>;
