// SPDX-License-Identifier: MIT
// What the procedure of gear-mesh keeps for its analysis: moments and stretches of rig time, nothing computed.
import { z } from 'zod';
import { provenSchema } from '../proven-spin.ts';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = z.object({
  /** False where the car has no teeth entered; then nothing ran. */
  teethKnown: z.boolean(),
  /** The run, where there was one. */
  run: provenSchema
    .extend({
      /** The paint dot stood at the top. */
      dotS: z.number(),
      idle: stretchSchema,
      /** Slow and steady, then the run-down from half throttle; null where the first spin was not proven. */
      turning: z.object({ slow: stretchSchema, coast: stretchSchema }).nullable(),
    })
    .nullable(),
});
export type Evidence = z.infer<typeof evidenceSchema>;
export type MeshRun = NonNullable<Evidence['run']>;
