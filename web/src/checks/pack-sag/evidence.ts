// SPDX-License-Identifier: MIT
// What the procedure of pack-sag keeps: the pack free and loaded by turns, and the two levels of the second way.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = z.object({
  /** One more than there are loads: before, between and after them. */
  free: z.array(stretchSchema),
  loaded: z.array(stretchSchema),
  /** End of the long light load and end of the short heavy one; null: not reached. */
  second: z.object({ light: stretchSchema, heavy: stretchSchema }).nullable(),
});
export type Evidence = z.infer<typeof evidenceSchema>;
