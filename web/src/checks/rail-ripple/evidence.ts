// SPDX-License-Identifier: MIT
// What the procedure of rail-ripple keeps: the rail sample by sample, without and with a load.
import { z } from 'zod';
import { burstSchema } from '../burst-wave.ts';

export const evidenceSchema = z.object({ bursts: z.array(burstSchema) });
export type Evidence = z.infer<typeof evidenceSchema>;
