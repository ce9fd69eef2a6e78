// SPDX-License-Identifier: MIT
// What a person at the bench does, told from the words of a step. Unknown words do nothing.

export type Act = 'block' | 'free' | 'switch on' | 'switch off';

/** "Lay the horn against the block" is 'block', "Take the block away" is 'free'. */
export function actIn(words: string): Act | null {
  const said = words.toLowerCase();
  if (/\bswitch(ed)?\b.*\boff\b/.test(said)) return 'switch off';
  if (/\bswitch(ed)?\b.*\bon\b/.test(said)) return 'switch on';
  if (/\bfree\b|\b(take|remove|lift|move|pull)\b.*\bblock\b/.test(said)) return 'free';
  return /\bblock\b/.test(said) ? 'block' : null;
}
