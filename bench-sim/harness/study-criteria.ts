// SPDX-License-Identifier: MIT
// What a coverage study has to show, each with yes or no: the intervals neither too narrow nor too wide, result by
// result and over all, and the decision rule at a limit and away from it. It runs nothing.
import { atLeast, level, type DecisionCount } from './study-decisions.ts';
import { shareOf, type Coverage } from './study-summary.ts';

export interface Criterion {
  readonly words: string;
  /** 'too few to tell': outside, but so few cells that its exact 95 % bounds reach inside. */
  readonly met: 'yes' | 'no' | 'too few to tell';
  readonly found: string;
}
const pooledShare = { low: 0.94, high: 0.97 } as const;
const atLimitAtMost = 0.035;
const insideUndecidedAtMost = 0.05;

export function criteriaOf(pooled: Coverage, decisions: readonly DecisionCount[]): Criterion[] {
  return [resultsMet(decisions), pooledMet(pooled), ...decisionRules(decisions)];
}
export const allMet = (criteria: readonly Criterion[]): boolean => criteria.every(({ met }) => met !== 'no');

function resultsMet(decisions: readonly DecisionCount[]): Criterion {
  const against = decisions.filter(({ compatible }) => compatible !== 'yes');
  const named = against.map(({ id, compatible }) => `${id} ${compatible.replace('no: ', '')}`);
  return {
    words: 'each result inside 95 to 98.5 % (exact binomial at 1 %, Holm)',
    met: against.length === 0 ? 'yes' : 'no',
    found: against.length === 0 ? `all ${decisions.length}` : named.join('; '),
  };
}
function pooledMet({ share, bounds, inside, of }: Coverage): Criterion {
  const isIn = share >= pooledShare.low && share <= pooledShare.high;
  const reaches = bounds[0] <= pooledShare.high && bounds[1] >= pooledShare.low;
  return {
    words: 'over all results 94 to 97 % inside',
    met: isIn ? 'yes' : reaches ? 'too few to tell' : 'no',
    found: `${inside}/${of}, ${percent(share)}`,
  };
}
function decisionRules(decisions: readonly DecisionCount[]): Criterion[] {
  const [atLimit, undecided] = [percent(atLimitAtMost), percent(insideUndecidedAtMost)];
  return [
    atMost(
      `exactly at its limit passed at most ${atLimit}`,
      atLimitAtMost,
      decisions.map((d) => ({ id: d.id, ...shareOf(d.atLimitPassed, d.atLimit) })),
    ),
    atMost(
      `two U inside undecided at most ${undecided}`,
      insideUndecidedAtMost,
      decisions.map((d) => ({ id: d.id, ...shareOf(d.insideUndecided, d.inside) })),
    ),
  ];
}
/** Over all results together, and no single one beyond chance (exact binomial at 1 %, Bonferroni). */
function atMost(words: string, most: number, shares: readonly (Coverage & { id: string })[]): Criterion {
  const sum = (pick: (one: Coverage) => number) => shares.reduce((total, one) => total + pick(one), 0);
  const all = shareOf(
    sum(({ inside }) => inside),
    sum(({ of }) => of),
  );
  const refused = shares.some(({ inside, of }) => atLeast(inside, of, most) < level / shares.length);
  const worst = shares.toSorted((a, b) => b.share - a.share)[0];
  return {
    words,
    met: refused || all.bounds[0] > most ? 'no' : all.share <= most ? 'yes' : 'too few to tell',
    found: `${all.inside}/${all.of}, ${percent(all.share)}; most: ${worst?.id} ${percent(worst?.share)}`,
  };
}
const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
