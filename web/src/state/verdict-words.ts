// SPDX-License-Identifier: MIT
// The four verdict words as shown, their colour class, and which of several speaks for a part.
import type { VerdictWord } from '#core/verdicts/limit';

const titles: Readonly<Record<VerdictWord, string>> = {
  pass: 'Pass',
  fail: 'Fail',
  undecided: 'Undecided',
  'not measured': 'Not measured',
};
const classes: Readonly<Record<VerdictWord, string>> = {
  pass: 'pass',
  fail: 'fail',
  undecided: 'und',
  'not measured': 'nm',
};
export const verdictTitle = (verdict: VerdictWord) => titles[verdict];
export const verdictClass = (verdict: VerdictWord) => classes[verdict];

/** Worst first: a part's tag shows its worst fresh verdict; an old pass stands below everything fresh. */
const order: readonly VerdictWord[] = ['fail', 'undecided', 'not measured', 'pass'];
export function worst<Item extends { readonly verdict: VerdictWord }>(
  items: readonly Item[],
): Item | undefined {
  return [...items].sort((a, b) => order.indexOf(a.verdict) - order.indexOf(b.verdict))[0];
}
/** The result to show first: the worst judged one, else the first there is. */
export function leading<Item extends { readonly verdict: VerdictWord; readonly judged: boolean }>(
  items: readonly Item[],
): Item | undefined {
  return worst(items.filter((item) => item.judged)) ?? items[0];
}
