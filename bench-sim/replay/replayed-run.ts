// SPDX-License-Identifier: MIT
// A run that never took place on a processor: the blocks of a template with the codes and edges of another car
// and another rig, and the evidence with its bursts. It judges nothing.
import type { RigDescription } from '#core/samples/rig-description';
import type { ScanBlock } from '#core/samples/scan-block';
import { ScanColumns } from '#core/samples/scan-columns';
import type { ClockFit } from '#core/samples/sample-store';
import { EdgeCounts } from './edge-counts.ts';
import type { Replayed } from './plant-replay.ts';
import { conversionAt, cyclesPerTick, type RunTemplate, samplesOf } from './run-template.ts';

const blockTicks = 8 * 1872;
export interface Burst {
  readonly startS: number;
  readonly codes: ArrayLike<number | null>;
}

export function replayedBlocks(template: RunTemplate, { codes, edges }: Replayed): ScanBlock[] {
  const counts = new EdgeCounts(edges, template.tickZero);
  return template.blocks.map(({ block, at }) => ({
    ...block,
    ...counts.until(template.tickZero + (block.tick + blockTicks) * cyclesPerTick),
    samples: samplesOf(codes, at),
  }));
}
/** `clock` is the template's fit; its ratio goes with the true clock of the rig. */
export function replayedSamples(
  rig: RigDescription,
  blocks: readonly ScanBlock[],
  clock: ClockFit,
  clockRatio: number,
): ScanColumns {
  const samples = new ScanColumns(rig);
  for (const block of blocks) samples.push(block);
  samples.clock = { ...clock, ratio: clock.origin === 'fit' ? clock.ratio * clockRatio : clock.ratio };
  return samples;
}
/** The same evidence with the codes of every burst in it taken from the replay. */
export function replayedEvidence(template: RunTemplate, codes: Uint16Array, evidence: unknown): unknown {
  if (Array.isArray(evidence)) return evidence.map((item) => replayedEvidence(template, codes, item));
  if (typeof evidence !== 'object' || evidence === null) return evidence;
  if ('codes' in evidence && 'startS' in evidence)
    return burstOf(template, codes, evidence as unknown as Burst);
  return Object.fromEntries(
    Object.entries(evidence).map(([key, value]) => [key, replayedEvidence(template, codes, value)]),
  );
}
/** `startS` counts from the first block's tick. */
function burstOf(template: RunTemplate, codes: Uint16Array, burst: Burst): Burst {
  const tick = template.blocks[0].block.tick + burst.startS / 0.5e-6;
  const at = conversionAt(template, tick);
  return { ...burst, codes: Array.from(codes.subarray(at, at + burst.codes.length)) };
}
