// SPDX-License-Identifier: MIT
// What the procedure of servo-idle keeps: the rest at centre, and slow ramps of the pulse between turning points.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = z.object({ rest: stretchSchema, ramps: z.array(stretchSchema) });
export type Evidence = z.infer<typeof evidenceSchema>;
