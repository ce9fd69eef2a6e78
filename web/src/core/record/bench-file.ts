// SPDX-License-Identifier: MIT
// One file with everything: a zip (PKWARE APPNOTE) of JSON and CSV that any program opens. manifest.json names format
// and version, shelf.json the cars and parts, runs/<n>.json each run's record, results.csv all results in one table.
// notes.json what a person wrote to them and repairs.json what was mended. The manifest holds size and CRC-32 of every file. Reading trusts nothing:
// what is damaged is told by name, what is whole is kept.
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { z } from 'zod';
import { repairsSchema, type KeptRepair } from '../history/repair.ts';
import { shelfSchema, type ShelfContent } from '../parts/shelf.ts';
import { crc32 } from './crc32.ts';
import { resultsCsv } from './csv-writer.ts';
import { readRecord } from './record-reader.ts';
import type { RunRecord } from './run-record.ts';

export const benchFileFormat = 'bench file';
/** Unpacked, bytes: no logbook is larger, and a hostile file must not fill the memory. */
const mostBytes = 400e6;
const noBenchFile = 'it is no bench file';
const manifestSchema = z.object(
  {
    format: z.literal(benchFileFormat, { error: noBenchFile }),
    version: z.literal(1, { error: 'it is of a later version of the program: update this one' }),
    /** Missing in older files. */
    files: z.record(z.string(), z.object({ bytes: z.number(), crc32: z.number() })).optional(),
  },
  { error: noBenchFile },
);
export interface BenchFileContent {
  readonly shelf: ShelfContent | null;
  /** Text of each run's record. */
  readonly runs: readonly string[];
  /** What a person wrote to a run, by its id. */
  readonly notes?: Readonly<Record<string, string>>;
  readonly repairs?: readonly KeptRepair[];
}
export interface BenchFileRead extends Required<BenchFileContent> {
  readonly records: readonly RunRecord[];
  /** What could not be read, by name. */
  readonly troubles: readonly string[];
}
/** The file can't be used; the message says why and what to do. */
export class BenchFileError extends Error {
  override readonly name = 'BenchFileError';
}
/** `madeAt`: ISO 8601. Throws RecordError when one of the runs is no record. */
export function writeBenchFile(
  { shelf, runs, notes, repairs }: BenchFileContent,
  madeAt: string,
): Uint8Array {
  const json = (content: unknown) => strToU8(JSON.stringify(content, null, 1));
  const records = runs.map(readRecord);
  const numbered = runs.map((text, index) => [`runs/${index + 1}.json`, strToU8(text)] as const);
  const files = {
    ...(shelf && { 'shelf.json': json(shelf) }),
    ...(notes && { 'notes.json': json(notes) }),
    ...(repairs && { 'repairs.json': json(repairs) }),
    'results.csv': strToU8(allResults(records)),
    ...Object.fromEntries(numbered),
  };
  const manifest = { format: benchFileFormat, version: 1, madeAt, runs: runs.length, files: sums(files) };
  return zipSync({ 'manifest.json': json(manifest), ...files });
}
type Sums = Readonly<Record<string, { readonly bytes: number; readonly crc32: number }>>;
const sums = (files: Readonly<Record<string, Uint8Array>>): Sums =>
  Object.fromEntries(
    Object.entries(files).map(([name, bytes]) => [name, { bytes: bytes.length, crc32: crc32(bytes) }]),
  );
/** One head line, then the results of every run. */
function allResults(records: readonly RunRecord[]): string {
  const tables = records.map((record) => {
    const [head, ...lines] = resultsCsv(record).split('\r\n');
    const stamped = lines.filter(Boolean).map((line) => `${record.startedAt},${line}`);
    return { head: `started_at,${head}`, lines: stamped };
  });
  const head = tables[0]?.head ?? 'started_at';
  return [head, ...tables.flatMap(({ lines }) => lines), ''].join('\r\n');
}
/** Throws BenchFileError when nothing of it can be used. */
export function readBenchFile(bytes: Uint8Array): BenchFileRead {
  const files = unpacked(bytes);
  const manifest = manifestSchema.safeParse(jsonIn(files['manifest.json']));
  if (!manifest.success) throw refused(manifest.error.issues[0].message);
  const troubles = changedFiles(files, manifest.data.files ?? {});
  const shelf = jsonFile(files, 'shelf.json', shelfSchema, troubles);
  const notes = jsonFile(files, 'notes.json', notesSchema, troubles) ?? {};
  const repairs = jsonFile(files, 'repairs.json', repairsSchema, troubles) ?? [];
  const names = Object.keys(files).filter((name) => /^runs\/\d+\.json$/.test(name));
  const read = names.flatMap((name) => runIn(name, files[name], troubles));
  const [runs, records] = [read.map(({ text }) => text), read.map(({ record }) => record)];
  return { shelf, notes, repairs, runs, records, troubles };
}
const notesSchema = z.record(z.string(), z.string());

/** Takes files that are not as they were written out of `files`; a line for each, and for each that is missing. */
function changedFiles(files: Record<string, Uint8Array>, written: Sums): string[] {
  return Object.entries(written).flatMap(([name, sum]) => {
    const bytes = files[name];
    if (!bytes) return [`${name}: it is missing`];
    if (bytes.length === sum.bytes && crc32(bytes) === sum.crc32) return [];
    delete files[name];
    return [`${name}: it is not as it was written (its checksum differs)`];
  });
}
const refused = (why: string): BenchFileError =>
  new BenchFileError(`The file can't be opened: ${why}. Choose a file that was saved from the logbook.`);

function unpacked(bytes: Uint8Array): Record<string, Uint8Array> {
  let total = 0;
  const filter = ({ originalSize }: { originalSize: number }) => (total += originalSize) <= mostBytes;
  let files: Record<string, Uint8Array>;
  try {
    files = unzipSync(bytes, { filter });
  } catch (cause) {
    const zip = bytes[0] === 0x50 && bytes[1] === 0x4b;
    const why = zip ? 'it is no whole zip: it was cut off or damaged on the way' : 'it is no zip';
    throw new BenchFileError(refused(why).message, { cause });
  }
  if (total > mostBytes) throw refused('it unpacks to more than 400 MB');
  return files;
}
function jsonIn(bytes: Uint8Array | undefined): unknown {
  try {
    return bytes && (JSON.parse(strFromU8(bytes)) as unknown);
  } catch {
    return undefined;
  }
}
function jsonFile<T>(
  files: Readonly<Record<string, Uint8Array>>,
  name: string,
  schema: z.ZodType<T>,
  troubles: string[],
): T | null {
  if (!files[name]) return null;
  const read = schema.safeParse(jsonIn(files[name]));
  if (read.success) return read.data;
  const [issue] = read.error.issues;
  troubles.push(`${name}: ${issue.path.join('.') || 'the whole'}: ${issue.message}`);
  return null;
}
function runIn(name: string, bytes: Uint8Array, troubles: string[]): { text: string; record: RunRecord }[] {
  try {
    const text = strFromU8(bytes);
    return [{ text, record: readRecord(text) }];
  } catch (cause) {
    troubles.push(`${name}: ${(cause as Error).message}`);
    return [];
  }
}
