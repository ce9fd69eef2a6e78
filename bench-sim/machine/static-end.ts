// SPDX-License-Identifier: MIT
// Finds where a compiled program's variables end, from the start-up code that avr-gcc links in: the loops that
// copy .data and clear .bss. A program without them has no variables that it knows of.
import { RAMSTART } from './registers.ts';

const STORE_ZERO = 0x921d; // st X+, r1
const STORE_COPY = 0x920d; // st X+, r0
const JUMP = 0x940c;
/** Words that the start-up code takes, with what a program hooks into it. */
const START_UP_WORDS = 160;
const COMPARE_HIGH_R17 = 0x07b1; // cpc r27, r17
const COMPARE_HIGH_R18 = 0x07b2; // cpc r27, r18

const isCompareLow = (word: number): boolean => (word & 0xf0f0) === 0x30a0; // cpi r26, K
const immediate = (word: number): number => ((word >> 4) & 0xf0) | (word & 0x0f);

/** The last `ldi rN, K` before `at`. */
function loadedBefore(words: Uint16Array, at: number, register: number): number | null {
  for (let i = at; i > Math.max(0, at - 24); i--) {
    if ((words[i] & 0xf0f0) === (0xe000 | ((register - 16) << 4))) return immediate(words[i]);
  }
  return null;
}

/** First address above the variables (`.noinit` at their end is not seen). */
export function staticEnd(words: Uint16Array): number {
  let end = RAMSTART;
  const start = words[0] === JUMP ? words[1] : 0;
  for (let i = start + 1; i < start + START_UP_WORDS && i + 1 < words.length; i++) {
    const high = words[i + 1] === COMPARE_HIGH_R17 ? 17 : words[i + 1] === COMPARE_HIGH_R18 ? 18 : 0;
    const stores = words[i - 1] === STORE_ZERO || words[i - 1] === STORE_COPY;
    if (high === 0 || !stores || !isCompareLow(words[i])) continue;
    const page = loadedBefore(words, i, high);
    if (page !== null) end = Math.max(end, (page << 8) | immediate(words[i]));
  }
  return end;
}
