// SPDX-License-Identifier: MIT
// One emulated run as a template: its log, the blocks that the host got, and for each block which conversions of
// the log it is made of, found by the codes themselves. Throws when a block fits nowhere: then log and stream
// are not of one run.
import { conversionsPerScan, scansPerBlock, type ScanBlock, valuesPerScan } from '#core/samples/scan-block';
import type { BenchLog } from './bench-log.ts';

const perBlock = scansPerBlock * conversionsPerScan;
/** Which conversions of a scan make its five values: the sums of two for a b c d, then the slow one. */
const conversionsOf = [[0, 3], [1, 2], [4, 7], [5, 6], [8]] as const;
/** From the start of a conversion to its sample, in processor cycles: 1.5 converter clocks of 128. */
export const holdCycles = 192;
export const cyclesPerTick = 8;

export interface PlacedBlock {
  readonly block: ScanBlock;
  /** Index of its first conversion in the log. */
  readonly at: number;
}
export interface RunTemplate {
  readonly log: BenchLog;
  readonly blocks: readonly PlacedBlock[];
  /** Processor cycle of rig tick 0. */
  readonly tickZero: number;
}
export function templateOf(log: BenchLog, blocks: readonly ScanBlock[]): RunTemplate {
  let from = 0;
  const placed = blocks.map((block) => {
    const at = placeOf(log, block, from);
    from = at + perBlock;
    return { block, at };
  });
  const [{ block, at }] = placed;
  return { log, blocks: placed, tickZero: startCycle(log, at) - block.tick * cyclesPerTick };
}
/** Cycle at which a conversion of the log started. */
const startCycle = (log: BenchLog, at: number): number => log.cycles.at(at) - holdCycles;

function placeOf(log: BenchLog, block: ScanBlock, from: number): number {
  for (let at = from; at + perBlock <= log.codes.length; at++) if (fits(log, block, at)) return at;
  throw new RangeError(`Block of scan ${block.scan} is made of no conversions of this log.`);
}
function fits(log: BenchLog, block: ScanBlock, at: number): boolean {
  if (log.inputsRead.at(at) !== block.fast[0]) return false;
  return samplesOf(log.codes.view(), at).every((sum, k) => sum === block.samples[k]);
}
/** The 40 values of a block from the codes of its conversions. */
export function samplesOf(codes: Uint16Array, at: number): Uint16Array {
  const samples = new Uint16Array(scansPerBlock * valuesPerScan);
  for (let k = 0; k < samples.length; k++) {
    const scan = at + Math.floor(k / valuesPerScan) * conversionsPerScan;
    for (const conversion of conversionsOf[k % valuesPerScan]) samples[k] += codes[scan + conversion];
  }
  return samples;
}
/** Where the conversion stands that started at a rig tick, to the nearest. */
export function conversionAt({ log, tickZero }: RunTemplate, tick: number): number {
  const cycle = tickZero + tick * cyclesPerTick + holdCycles;
  const cycles = log.cycles.view();
  let low = 0;
  let high = cycles.length - 1;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (cycles[middle] < cycle - holdCycles) low = middle + 1;
    else high = middle;
  }
  return low;
}
