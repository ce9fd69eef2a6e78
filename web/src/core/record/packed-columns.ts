// SPDX-License-Identifier: MIT
// Raw scan columns as text and back: each column is the base64 of its little-endian numbers, so that a record
// is plain JSON and keeps every count as it came. It knows columns, no scaling.
import { z } from 'zod';
import { blockFields, type BlockColumns } from '../samples/block-columns.ts';
import type { ScanBlock } from '../samples/scan-block.ts';

const { byteFields, wordFields, longFields } = blockFields;
const names = [
  ...byteFields,
  ...wordFields,
  ...longFields,
  'fast',
  'samples',
  'edges',
  'edgesOfBlock',
] as const;
type ColumnName = (typeof names)[number];
export const packedSchema = z.object({
  blocks: z.int().min(0),
  columns: z.record(z.string(), z.base64()),
});
export type PackedColumns = z.infer<typeof packedSchema>;

const bytesPerCell = (name: ColumnName): 1 | 2 | 4 => {
  if ((longFields as readonly string[]).includes(name)) return 4;
  return (wordFields as readonly string[]).includes(name) || name === 'samples' || name === 'edges' ? 2 : 1;
};
/** Cells a block; edges vary and are told by edgesOfBlock. */
const cellsPerBlock = (name: ColumnName): number => (name === 'fast' ? 4 : name === 'samples' ? 40 : 1);

export function packColumns(raw: BlockColumns): PackedColumns {
  const { fast, samples, edges, edgesOfBlock } = raw;
  const all = { ...raw.bytes, ...raw.words, ...raw.longs, fast, samples, edges, edgesOfBlock };
  const columns = Object.fromEntries(
    names.map((name) => [name, toBase64(all[name].view(), bytesPerCell(name))]),
  );
  return { blocks: raw.length, columns };
}
/** The blocks in order. Throws RangeError with the column's name when lengths don't fit together. */
export function* unpackColumns(packed: PackedColumns): Generator<ScanBlock> {
  const read = Object.fromEntries(names.map((name) => [name, column(packed, name)])) as Record<
    ColumnName,
    Uint32Array
  >;
  let edgeStart = 0;
  for (let i = 0; i < packed.blocks; i++) {
    const count = read.edgesOfBlock[i];
    const single = Object.fromEntries(
      [...byteFields, ...wordFields, ...longFields].map((name) => [name, read[name][i]]),
    );
    yield {
      ...(single as Record<
        (typeof byteFields)[number] | (typeof wordFields)[number] | (typeof longFields)[number],
        number
      >),
      fast: Array.from(read.fast.subarray(i * 4, i * 4 + 4)),
      samples: read.samples.subarray(i * 40, i * 40 + 40),
      edges: read.edges.subarray(edgeStart, edgeStart + count),
    };
    edgeStart += count;
  }
}
/** Throws RangeError unless every column is there and as long as it must be. */
export function requireWhole(packed: PackedColumns): void {
  const counts = column(packed, 'edgesOfBlock');
  const edges = counts.reduce((sum, count) => sum + count, 0);
  for (const name of names) {
    const wanted = name === 'edges' ? edges : packed.blocks * cellsPerBlock(name);
    const got = column(packed, name).length;
    if (got !== wanted) throw new RangeError(`column "${name}" holds ${got} values, ${wanted} were expected`);
  }
}
function column(packed: PackedColumns, name: ColumnName): Uint32Array {
  const text = packed.columns[name];
  if (text === undefined) throw new RangeError(`column "${name}" is missing`);
  return fromBase64(text, bytesPerCell(name));
}
function toBase64(cells: ArrayLike<number>, size: number): string {
  const bytes = new Uint8Array(cells.length * size);
  for (let i = 0; i < cells.length; i++)
    for (let b = 0; b < size; b++) bytes[i * size + b] = (cells[i] >>> (8 * b)) & 0xff;
  let text = '';
  for (let at = 0; at < bytes.length; at += 8192)
    text += String.fromCharCode(...bytes.subarray(at, at + 8192));
  return btoa(text);
}
function fromBase64(text: string, size: number): Uint32Array {
  const bytes = atob(text);
  if (bytes.length % size !== 0) throw new RangeError('a column ends inside a number');
  const cells = new Uint32Array(bytes.length / size);
  for (let i = 0; i < bytes.length; i++)
    cells[Math.floor(i / size)] += bytes.charCodeAt(i) * 2 ** (8 * (i % size));
  return cells;
}
