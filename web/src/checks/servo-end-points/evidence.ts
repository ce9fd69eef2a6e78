// SPDX-License-Identifier: MIT
// What the procedure of servo-end-points keeps: every step of every search with the stretch in which the servo
// drove to it, the hold at the proposed settings, and what the radio's settings give at the receiver.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

/** The side of shorter pulses and that of longer ones; which is left, the radio tells. */
export const sides = ['short', 'long'] as const;
export type Side = (typeof sides)[number];
export const outwardOf = (side: Side): 1 | -1 => (side === 'short' ? -1 : 1);
export const hitches = ['wheels off', 'wheels hanging', 'suspension pressed down'] as const;
export type Hitch = (typeof hitches)[number];

const stepSchema = z.object({ widthUs: z.number(), stretch: stretchSchema });
const searchSchema = z.object({
  side: z.enum(sides),
  hitch: z.enum(hitches),
  /** The servo standing still before it set off outward. */
  still: stretchSchema,
  /** Of the last walk outward, from inside. */
  steps: z.array(stepSchema),
  /** Whether the current rose before the search had to end. */
  met: z.boolean(),
});
export const evidenceSchema = z.object({
  searches: z.array(searchSchema),
  holds: z.array(z.object({ side: z.enum(sides), widthUs: z.number(), stretch: stretchSchema })),
  /** The radio's steering at the receiver; null where nobody knows it. */
  radio: z.object({ leftUs: z.number(), centreUs: z.number(), rightUs: z.number() }).nullable(),
});
export type Evidence = z.infer<typeof evidenceSchema>;
export type Search = z.infer<typeof searchSchema>;
export type KeptStep = z.infer<typeof stepSchema>;
