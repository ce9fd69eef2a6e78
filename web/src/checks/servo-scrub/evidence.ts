// SPDX-License-Identifier: MIT
// What the procedure of servo-scrub keeps: the way of each move, five heard on the servo's current and five on the
// rail, and the rest at lock after each.
import { z } from 'zod';
import { burstSchema } from '../burst-wave.ts';
import { stretchSchema } from '../stretch.ts';

const moveSchema = z.object({
  fromUs: z.number(),
  toUs: z.number(),
  burst: burstSchema,
  rest: stretchSchema,
});
export const evidenceSchema = z.object({ moves: z.array(moveSchema) });
export type Evidence = z.infer<typeof evidenceSchema>;
export type Move = z.infer<typeof moveSchema>;
