// SPDX-License-Identifier: MIT
// Runs of this logbook as a file carries them, with the identities of their parts, and what a file that a person chose
// holds: a bench file, or the record of one run as it is saved by itself.
import { readBenchFile, writeBenchFile, type BenchFileRead } from '#core/record/bench-file';
import { withRunIdentity } from '#core/record/record-identity';
import { readRecord } from '#core/record/record-reader';
import { forFile } from '#core/parts/shelf-merge';
import type { Logbook } from './logbook.svelte.ts';
import type { Repairs } from './repairs.svelte.ts';
import type { RunSummary } from './run-summary.ts';
import type { Shelf } from './shelf.svelte.ts';

interface Pieces {
  readonly logbook: Pick<Logbook, 'record'>;
  readonly shelf: Pick<Shelf, 'content'>;
  readonly repairs: Pick<Repairs, 'list'>;
}
export interface PackedRuns {
  readonly bytes: Uint8Array;
  readonly packed: number;
}
/** Runs without a whole record are left out. */
export async function packedRuns(
  { logbook, shelf, repairs }: Pieces,
  runs: readonly RunSummary[],
  madeAt: string,
): Promise<PackedRuns> {
  const texts: string[] = [];
  const notes: Record<string, string> = {};
  for (const run of runs) {
    const text = await logbook.record(run.id);
    if (!readable(text)) continue;
    texts.push(withRunIdentity(text, run));
    if (run.note) notes[run.id] = run.note;
  }
  const around = { shelf: forFile(shelf.content), repairs: repairs.list };
  return { bytes: writeBenchFile({ ...around, runs: texts, notes }, madeAt), packed: texts.length };
}
function readable(text: unknown): text is string {
  try {
    return typeof text === 'string' && !!readRecord(text);
  } catch {
    return false;
  }
}
const brace = 0x7b;
/** Throws RecordError or BenchFileError. */
export function readFile(bytes: Uint8Array): BenchFileRead {
  if (bytes[0] !== brace) return readBenchFile(bytes);
  const text = new TextDecoder().decode(bytes);
  return { shelf: null, notes: {}, repairs: [], runs: [text], records: [readRecord(text)], troubles: [] };
}
