// SPDX-License-Identifier: MIT
// What a baseline's limit keeps of the rig that its first runs were made on. Apart from first-runs.ts, so that who
// reads a car needs no statistics.
import { z } from 'zod';

/** What of the first runs' rig their mean carries. */
export const firstRunsSchema = z.object({
  rigSerial: z.string(),
  centre: z.number(),
  errors: z
    .array(
      z.object({
        source: z.string(),
        origin: z.string(),
        u: z.number().min(0, 'an error of the rig cannot be below 0'),
      }),
    )
    .readonly(),
});
export type FirstRuns = Readonly<z.infer<typeof firstRunsSchema>>;
