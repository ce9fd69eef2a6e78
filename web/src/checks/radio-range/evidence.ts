// SPDX-License-Identifier: MIT
// What the procedure of radio-range keeps: for each position of wheel and trigger a stretch of either channel.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

export const positions = ['rest', 'left', 'right', 'full', 'brake', 'rest again'] as const;
export type Position = (typeof positions)[number];
export const evidenceSchema = z.object({
  /** False when the receiver rail did not come up. */
  powered: z.boolean(),
  held: z.array(
    z.object({
      position: z.enum(positions),
      /** Receiver channel 1, then 2. */
      channels: z.tuple([stretchSchema, stretchSchema]),
    }),
  ),
});
export type Evidence = z.infer<typeof evidenceSchema>;
