// SPDX-License-Identifier: MIT
// One file with everything: a zip (PKWARE APPNOTE) of JSON and CSV that any program opens. manifest.json names format
// and version, shelf.json the cars and parts, runs/<n>.json each run's record, results.csv all results in one table.
// Reading trusts nothing: what is damaged is told by name, what is whole is kept.
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { z } from 'zod';
import { shelfSchema, type ShelfContent } from '../parts/shelf.ts';
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
  },
  { error: noBenchFile },
);
export interface BenchFileContent {
  readonly shelf: ShelfContent | null;
  /** Text of each run's record. */
  readonly runs: readonly string[];
}
export interface BenchFileRead extends BenchFileContent {
  readonly records: readonly RunRecord[];
  /** What could not be read, by name. */
  readonly troubles: readonly string[];
}
/** The file can't be used; the message says why and what to do. */
export class BenchFileError extends Error {
  override readonly name = 'BenchFileError';
}
/** `madeAt`: ISO 8601. Throws RecordError when one of the runs is no record. */
export function writeBenchFile({ shelf, runs }: BenchFileContent, madeAt: string): Uint8Array {
  const json = (content: unknown) => strToU8(JSON.stringify(content, null, 1));
  const records = runs.map(readRecord);
  const numbered = runs.map((text, index) => [`runs/${index + 1}.json`, strToU8(text)] as const);
  return zipSync({
    'manifest.json': json({ format: benchFileFormat, version: 1, madeAt, runs: runs.length }),
    ...(shelf && { 'shelf.json': json(shelf) }),
    'results.csv': strToU8(allResults(records)),
    ...Object.fromEntries(numbered),
  });
}
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
  const troubles: string[] = [];
  const shelf = shelfIn(files['shelf.json'], troubles);
  const names = Object.keys(files).filter((name) => /^runs\/\d+\.json$/.test(name));
  const read = names.flatMap((name) => runIn(name, files[name], troubles));
  return { shelf, runs: read.map(({ text }) => text), records: read.map(({ record }) => record), troubles };
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
    throw refused(`it is no whole zip (${(cause as Error).message})`);
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
function shelfIn(bytes: Uint8Array | undefined, troubles: string[]): ShelfContent | null {
  if (!bytes) return null;
  const shelf = shelfSchema.safeParse(jsonIn(bytes));
  if (shelf.success) return shelf.data;
  const [issue] = shelf.error.issues;
  troubles.push(`shelf.json: ${issue.path.join('.') || 'the whole'}: ${issue.message}`);
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
