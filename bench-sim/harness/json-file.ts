// SPDX-License-Identifier: MIT
// JSON from a file that a person named, with clear words when there is none. It knows no schema.
import { readFileSync } from 'node:fs';
import { BadUsage, type BadUsageCode } from './bad-usage.ts';

export interface AskedFile {
  /** What it holds, as in "The car file ...". */
  readonly what: string;
  /** The flag that names it. */
  readonly flag: string;
  /** The error when it holds no JSON. */
  readonly code: BadUsageCode;
  readonly advice: string;
}
/** Throws BadUsage. */
export function readJsonFile(path: string, { what, flag, code, advice }: AskedFile): unknown {
  const given = attempt(
    () => readFileSync(path, 'utf8'),
    (cause) => new BadUsage('badFile', unreadable(path, told(cause), { what, flag }), { cause }),
  );
  return attempt(
    () => JSON.parse(given) as unknown,
    (cause) =>
      new BadUsage(code, `The ${what} file ${path} is not JSON: ${told(cause)}. ${advice}`, { cause }),
  );
}
const unreadable = (path: string, why: string, { what, flag }: Pick<AskedFile, 'what' | 'flag'>): string =>
  `The ${what} file ${path} can't be read: ${why}. Give ${flag} the name of a file.`;

/** Throws BadUsage. */
export const readTextFile = (path: string): string =>
  attempt(
    () => readFileSync(path, 'utf8'),
    (cause) => new BadUsage('badFile', `The file ${path} can't be read: ${told(cause)}.`, { cause }),
  );
const told = (cause: unknown): string => (cause as Error).message;

function attempt<T>(work: () => T, failed: (cause: unknown) => Error): T {
  try {
    return work();
  } catch (cause) {
    throw failed(cause);
  }
}
