// SPDX-License-Identifier: MIT
// The words of `npm run perf`, parsed. It measures nothing.
import { parseArgs } from 'node:util';
import { BadUsage } from './bad-usage.ts';

export const perfUsage = `Usage:
  npm run perf -- [--quick] [--json]
--quick repeats less: for a first look, not for figures to keep.`;
const options = { quick: { type: 'boolean' }, json: { type: 'boolean' } } as const;

/** Throws BadUsage. */
export function parsePerfArguments(words: readonly string[]): { quick: boolean; json: boolean } {
  try {
    const { quick = false, json = false } = parseArgs({ args: [...words], options, strict: true }).values;
    return { quick, json };
  } catch (cause) {
    const [first] = (cause as Error).message.split(/\. |\n/);
    throw new BadUsage('badFlag', `${first}.\n${perfUsage}`, { cause });
  }
}
