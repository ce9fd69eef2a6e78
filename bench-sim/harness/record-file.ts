// SPDX-License-Identifier: MIT
// Writes a run record to a file, and says before the run whether that can work.
import { accessSync, constants, existsSync, statSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { writeRecord } from '#core/record/record-reader';
import type { RunRecord } from '#core/record/run-record';
import { BadUsage } from './bad-usage.ts';

/** Throws BadUsage. */
export function requireWritable(path: string): void {
  const folder = dirname(resolve(path));
  if (!existsSync(folder))
    throw new BadUsage('badFile', `The folder ${folder} for --record does not exist. Make it first.`);
  if (existsSync(path) && statSync(path).isDirectory())
    throw new BadUsage('badFile', `--record takes the name of a file; ${path} is a folder.`);
  try {
    accessSync(existsSync(path) ? path : folder, constants.W_OK);
  } catch (cause) {
    throw new BadUsage('badFile', `${path} can't be written. Choose another place for --record.`, { cause });
  }
}
export const keepRecord = (path: string, record: RunRecord): void =>
  writeFileSync(path, `${writeRecord(record)}\n`);
