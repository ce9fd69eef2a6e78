// SPDX-License-Identifier: MIT
// Writes a run record to a file, and says before the run whether that can work.
import { closeSync, existsSync, openSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { writeRecord } from '#core/record/record-reader';
import type { RunRecord } from '#core/record/run-record';
import { BadUsage } from './bad-usage.ts';
import type { PlanFile } from './plan-file.ts';

/** Throws BadUsage. It tries by opening the file, as permissions alone do not tell; what was there stays. */
export function requireWritable(path: string): void {
  if (path === '') throw new BadUsage('badFile', '--record takes the name of a file; none was given.');
  const folder = dirname(resolve(path));
  if (!existsSync(folder))
    throw new BadUsage('badFile', `The folder ${folder} for --record does not exist. Make it first.`);
  const isThere = existsSync(path);
  if (isThere && statSync(path).isDirectory())
    throw new BadUsage('badFile', `--record takes the name of a file; ${path} is a folder.`);
  writing(path, () => closeSync(openSync(path, 'a')));
  if (!isThere) rmSync(path);
}
/** Throws BadUsage. */
export const keepRecord = (path: string, record: RunRecord): void =>
  writing(path, () => writeFileSync(path, `${writeRecord(record)}\n`));
/** Throws BadUsage. */
export const keepPlan = (path: string, file: PlanFile): void =>
  writing(path, () => writeFileSync(path, `${JSON.stringify(file)}\n`));

function writing(path: string, act: () => void): void {
  try {
    act();
  } catch (cause) {
    const words = `${path} can't be written: ${(cause as Error).message}. Choose another place for --record.`;
    throw new BadUsage('badFile', words, { cause });
  }
}
