// SPDX-License-Identifier: MIT
// Reads a run record from text and says in words what is wrong with one that can't be read. It trusts nothing
// of the file and knows no check.
import { ScanColumns } from '../samples/scan-columns.ts';
import { requireWhole, unpackColumns } from './packed-columns.ts';
import { recordFormat, recordSchema, recordVersion, type RunRecord } from './run-record.ts';

/** The record can't be used; the message says why and what to do. */
export class RecordError extends Error {}

export function readRecord(text: string): RunRecord {
  const data = parsed(text);
  refuseOthers(data);
  const result = recordSchema.safeParse(data);
  if (!result.success) {
    const [issue] = result.error.issues;
    throw new RecordError(
      `The record is damaged: ${issue.path.join('.') || 'its whole'}: ${issue.message}. Use another copy of the file.`,
    );
  }
  wholeOrRefused(result.data);
  return result.data;
}
/** Text of a record; endless degrees of freedom become null. */
export const writeRecord = (record: RunRecord): string => JSON.stringify(record);

/** The samples of a record, as they were while the run went on. */
export function samplesOf(record: RunRecord): ScanColumns {
  const columns = new ScanColumns(record.rig);
  for (const block of unpackColumns(record.raw)) columns.push(block);
  for (const { label, atS } of record.marks) columns.mark(label, atS);
  columns.clock = record.clock;
  return columns;
}
function parsed(text: string): unknown {
  if (text.trim() === '') throw new RecordError('The file is empty. Export the run again.');
  try {
    return JSON.parse(text);
  } catch (cause) {
    throw new RecordError(
      `The file is not a run record: it is not whole JSON (${(cause as Error).message}). It may have been cut off; export the run again.`,
      { cause },
    );
  }
}
function refuseOthers(data: unknown): void {
  const { format, version } = (typeof data === 'object' && data !== null ? data : {}) as Record<
    string,
    unknown
  >;
  if (format !== recordFormat)
    throw new RecordError(
      'The file is JSON but not a run record of this bench. Choose a file that was exported from the logbook.',
    );
  if (typeof version !== 'number')
    throw new RecordError('The record tells no version. Use another copy of the file.');
  if (version > recordVersion)
    throw new RecordError(
      `The record has version ${version}; this program reads up to ${recordVersion}. Update the program.`,
    );
}
function wholeOrRefused(record: RunRecord): void {
  try {
    requireWhole(record.raw);
  } catch (cause) {
    throw new RecordError(
      `The record is damaged: ${(cause as Error).message}. Use another copy of the file.`,
      { cause },
    );
  }
}
