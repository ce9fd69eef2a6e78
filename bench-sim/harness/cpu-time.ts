// SPDX-License-Identifier: MIT
// Times work by the processor time of this process, so that other programs on the computer hardly count, and next
// to a reference loop that never changes. It does not know what the work is.

const usPerS = 1e6;
const referenceSteps = 20_000_000;

/** Processor seconds that this process used meanwhile, all its threads together. */
export async function cpuSeconds(work: () => unknown): Promise<number> {
  const start = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / usPerS;
}
/** Twenty million steps of Marsaglia's 32-bit xorshift generator (13, 17, 5): whole numbers only, no memory. */
export function referenceLoop(): number {
  let word = 2463534242;
  for (let step = 0; step < referenceSteps; step++) {
    word ^= word << 13;
    word ^= word >>> 17;
    word ^= word << 5;
  }
  return word >>> 0;
}
/** Mean of a loop before and one after the work: a computer that changes its pace meanwhile shows in both. */
export async function besideReference(work: () => unknown): Promise<{ workS: number; loopS: number }> {
  const before = await cpuSeconds(referenceLoop);
  const workS = await cpuSeconds(work);
  const after = await cpuSeconds(referenceLoop);
  return { workS, loopS: (before + after) / 2 };
}
