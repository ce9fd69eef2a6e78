// SPDX-License-Identifier: MIT
// What the procedure of rest-voltage keeps: one quiet stretch, nothing switched on.
import { z } from 'zod';
import { stretchSchema } from '../stretch.ts';

export const evidenceSchema = z.object({ rest: stretchSchema });
export type Evidence = z.infer<typeof evidenceSchema>;
