// SPDX-License-Identifier: MIT
// Small turns of phrase that several screens share.

/** "about" is said by the caller: "45 s", "2 min". */
export function durationWords(seconds: number): string {
  return seconds < 90 ? `${Math.round(seconds)}\u00a0s` : `${Math.round(seconds / 60)}\u00a0min`;
}
/** "1 look", "3 looks". */
export const countWords = (count: number, one: string) => `${count} ${count === 1 ? one : `${one}s`}`;
/** What moves and how long: words of a check are a sentence, those of a part are not. */
export function movesWords(moves: string, seconds: number): string {
  const about = `about ${durationWords(seconds)}.`;
  return moves.endsWith('.') ? `${moves} It takes ${about}` : `${moves} for ${about}`;
}
export const leftWords = (seconds: number) => `${Math.max(0, Math.ceil(seconds))}\u00a0s left`;
/** A pause has no step of its own; a check that only listens is never live. */
export function progressWords(
  { step, of, leftS }: { step: number; of: number; leftS: number },
  live: boolean,
): string {
  const left = of > 0 ? `Step ${step} of ${of}, ${leftWords(leftS)}.` : `${leftWords(leftS)}.`;
  return live ? `Live. ${left}` : left;
}
export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
