// SPDX-License-Identifier: MIT
// The raw blocks of one run as growing columns, exactly as they came: the ground that records are written from
// and every view is computed on. It unwraps rig time; it does not scale, reject or interpret anything.
import { GrowingColumn } from './growing-column.ts';
import type { ScanBlock } from './scan-block.ts';
import { scansPerBlock, valuesPerScan } from './scan-block.ts';

const valuesPerBlock = scansPerBlock * valuesPerScan;
const byteFields = ['slow', 'slowFirst', 'state', 'trip', 'edgesB', 'edgesC', 'badHall'] as const;
const wordFields = ['outputs', 'steering', 'throttle', 'edgesA'] as const;
const longFields = ['scan', 'tick', 'lastEdge'] as const;
export type ByteField = (typeof byteFields)[number];
export type WordField = (typeof wordFields)[number];
export type LongField = (typeof longFields)[number];
export const blockFields = { byteFields, wordFields, longFields } as const;

export class BlockColumns {
  readonly bytes = fromNames(byteFields, () => new GrowingColumn(Uint8Array));
  readonly words = fromNames(wordFields, () => new GrowingColumn(Uint16Array));
  readonly longs = fromNames(longFields, () => new GrowingColumn(Uint32Array));
  /** Four channels a block, one byte each. */
  readonly fast = new GrowingColumn(Uint8Array);
  readonly samples = new GrowingColumn(Uint16Array, 4096);
  readonly edges = new GrowingColumn(Uint16Array);
  readonly edgesOfBlock = new GrowingColumn(Uint8Array);
  /** Ticks since the first block's first conversion, free of the 32-bit wrap. */
  readonly sinceFirst = new GrowingColumn(Float64Array);

  get length(): number {
    return this.sinceFirst.length;
  }
  push(block: ScanBlock): void {
    if (block.samples.length !== valuesPerBlock)
      throw new RangeError(`a scan block has ${valuesPerBlock} values`);
    this.sinceFirst.push(this.unwrapped(block.tick));
    for (const field of byteFields) this.bytes[field].push(block[field]);
    for (const field of wordFields) this.words[field].push(block[field]);
    for (const field of longFields) this.longs[field].push(block[field]);
    this.fast.append(block.fast);
    this.samples.append(block.samples);
    this.edges.append(block.edges);
    this.edgesOfBlock.push(block.edges.length);
  }
  /** A block as it came; `edgeStart` is where its edge distances begin. */
  block(index: number, edgeStart: number): ScanBlock {
    const read = <K extends string>(columns: Record<K, { at(i: number): number }>, names: readonly K[]) =>
      Object.fromEntries(names.map((name) => [name, columns[name].at(index)])) as Record<K, number>;
    return {
      ...read(this.bytes, byteFields),
      ...read(this.words, wordFields),
      ...read(this.longs, longFields),
      fast: Array.from(this.fast.view().subarray(index * 4, index * 4 + 4)),
      samples: this.samples.view().slice(index * valuesPerBlock, (index + 1) * valuesPerBlock),
      edges: this.edges.view().slice(edgeStart, edgeStart + this.edgesOfBlock.at(index)),
    };
  }
  /** Value of one slot of one scan: 0 to 3 the sums of a to d, 4 the slow conversion. */
  sample(block: number, scan: number, slot: number): number {
    return this.samples.at(block * valuesPerBlock + scan * valuesPerScan + slot);
  }
  private unwrapped(tick: number): number {
    if (this.length === 0) return 0;
    const last = this.length - 1;
    return this.sinceFirst.at(last) + ((tick - this.longs.tick.at(last)) >>> 0);
  }
}
function fromNames<K extends string, V>(names: readonly K[], make: () => V): Readonly<Record<K, V>> {
  return Object.fromEntries(names.map((name) => [name, make()])) as unknown as Record<K, V>;
}
