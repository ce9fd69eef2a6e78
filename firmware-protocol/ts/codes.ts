// SPDX-License-Identifier: MIT
// Looks up the named numbers of the wire: name to code, code to name, and the words a person reads.
// It knows no message. A code of a later version gets honest words instead of an exception.
import { codeTable } from './generated-messages.ts';
import type { CodeEntry, CodeGroup } from './generated-messages.ts';

export {
  actionCode,
  captureSourceCode,
  conditionCode,
  eventCode,
  feedLevelCode,
  limitCode,
  outputBitCode,
  outputCode,
  reasonCode,
  resetCauseCode,
  stateCode,
  switchCode,
  tripCode,
  codeTable,
  wire,
} from './generated-messages.ts';
export type { CodeEntry, CodeGroup } from './generated-messages.ts';

const entries = (group: CodeGroup): readonly CodeEntry[] => codeTable[group];
const entryOf = (group: CodeGroup, code: number): CodeEntry | undefined =>
  entries(group).find((entry) => entry.code === code);

/** The name of a code, undefined when this version does not know it. */
export const codeName = (group: CodeGroup, code: number): string | undefined => entryOf(group, code)?.name;
/** The code of a name, undefined when there is none. */
export const codeOf = (group: CodeGroup, name: string): number | undefined =>
  entries(group).find((entry) => entry.name === name)?.code;
/** What a person reads of a code. */
export const codeWords = (group: CodeGroup, code: number): string =>
  entryOf(group, code)?.words ?? `${group} ${code}, unknown to this version of the program`;
export const tripWords = (code: number): string => codeWords('trip', code);
export const reasonWords = (code: number): string => codeWords('reason', code);
export const stateWords = (code: number): string => codeWords('state', code);
export const resetCauseWords = (code: number): string => codeWords('resetCause', code);
/** The entries of a bit group (outputBit, condition) whose bits are set. */
export const setBits = (group: 'outputBit' | 'condition', bits: number): readonly CodeEntry[] =>
  entries(group).filter((entry) => (bits & (1 << entry.code)) !== 0);
