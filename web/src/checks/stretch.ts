// SPDX-License-Identifier: MIT
// Stretches of rig time that a procedure keeps for its analysis. It marks, it does not measure.
import { z } from 'zod';
import type { Bench } from './check.ts';

export const stretchSchema = z.object({ fromS: z.number(), toS: z.number() });
export type Stretch = z.infer<typeof stretchSchema>;

/** Waits `settleS`, then keeps the next `lengthS`. */
export async function keepStretch(
  bench: Pick<Bench, 'now' | 'wait'>,
  settleS: number,
  lengthS: number,
): Promise<Stretch> {
  await bench.wait(settleS);
  const fromS = bench.now();
  await bench.wait(lengthS);
  return { fromS, toS: bench.now() };
}
