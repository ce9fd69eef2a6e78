// SPDX-License-Identifier: MIT
// Look-ups of the named numbers: there, back, and for numbers of a later version.
import { expect, it } from 'vitest';
import {
  codeName,
  codeOf,
  codeTable,
  codeWords,
  reasonWords,
  setBits,
  tripCode,
  tripWords,
} from './codes.ts';

it('goes from name to code and back for every code', () => {
  for (const group of Object.keys(codeTable) as (keyof typeof codeTable)[])
    for (const { code, name, words } of codeTable[group]) {
      expect(codeOf(group, name)).toBe(code);
      expect(codeName(group, code)).toBe(name);
      expect(codeWords(group, code)).toBe(words);
    }
});
it('says what a trip and a refusal mean', () => {
  expect(tripWords(tripCode.hostLost)).toBe('The host fell silent.');
  expect(reasonWords(3)).toBe('The rig speaks an older major version of the protocol.');
});
it('has words for a code it does not know', () => {
  expect(tripWords(200)).toBe('trip 200, unknown to this version of the program');
  expect(codeName('trip', 200)).toBeUndefined();
  expect(codeOf('trip', 'meteor')).toBeUndefined();
});
it('names the bits that are set', () => {
  expect(setBits('condition', 0b1010).map((entry) => entry.name)).toEqual(['stopOpen', 'tripLatched']);
  expect(setBits('outputBit', 0)).toEqual([]);
});
