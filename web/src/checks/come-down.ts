// SPDX-License-Identifier: MIT
// Leads a servo to where it is to be read, always from longer pulses: friction and dead band leave the horn short on
// the same side each time, and what two readings have in common falls out of their difference.
import type { Bench } from './check.ts';

/** More than dead band and friction keep a stiff servo back, some 3 degrees (from memory). */
const fromAboveUs = 80;
const settleS = 0.5;

export async function comeDownTo(bench: Bench, widthUs: number): Promise<void> {
  await bench.steer(widthUs + fromAboveUs, 0.5);
  await bench.wait(settleS);
  await bench.steer(widthUs, 0.2);
  await bench.wait(settleS);
}
