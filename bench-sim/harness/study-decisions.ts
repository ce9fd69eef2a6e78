// SPDX-License-Identifier: MIT
// How the decision rule does where it is hardest: parts whose truth stands exactly at a limit, and parts two
// half-widths inside; and whether each result's coverage is compatible with 95 to 98.5 % (exact binomial, Holm,
// Scand. J. Statist. 6, 1979). It runs nothing.
import jstat from 'jstat';
import type { CellOutcome, CellResult } from './study-run.ts';
import { grouped } from './study-summary.ts';

export interface DecisionCount {
  readonly id: string;
  readonly atLimit: number;
  readonly atLimitPassed: number;
  readonly inside: number;
  readonly insideUndecided: number;
  /** 'yes', or what speaks against it, at 1 % over all results. */
  readonly compatible: string;
}
export const level = 0.01;
const claimed = { low: 0.95, high: 0.985 } as const;

export function decisionCounts(outcomes: readonly CellOutcome[]): DecisionCount[] {
  const healthy = outcomes.filter(({ faults }) => Object.keys(faults).length === 0);
  const all = healthy.flatMap(({ results }) => results).filter(({ placed }) => placed !== null);
  const groups = grouped(all, ({ id }) => id);
  const words = compatibilities([...groups.values()].map(hitsOf));
  return [...groups].map(([id, results], k) => ({ id, ...countsOf(results), compatible: words[k] }));
}
function countsOf(results: readonly CellResult[]) {
  const atLimit = results.flatMap(({ placed }) => placed?.atLimit ?? []);
  const inside = results.flatMap(({ placed }) => placed?.inside ?? []);
  return {
    atLimit: atLimit.length,
    atLimitPassed: atLimit.filter((verdict) => verdict === 'pass').length,
    inside: inside.length,
    insideUndecided: inside.filter((verdict) => verdict === 'undecided').length,
  };
}
const hitsOf = (results: readonly CellResult[]): [number, number] => [
  results.filter(({ truth, interval }) => interval && truth !== null && inside(truth, interval)).length,
  results.length,
];
const inside = (truth: number, [low, high]: readonly [number, number]): boolean =>
  truth >= low && truth <= high;

/** Holm's step-down over both one-sided tests of every result. */
export function compatibilities(hits: readonly (readonly [number, number])[]): string[] {
  const tests = hits.flatMap(([hit, of], k) => [
    { k, p: atMost(hit, of, claimed.low), word: 'too few inside' },
    { k, p: atLeast(hit, of, claimed.high), word: 'too wide' },
  ]);
  const refused = new Map<number, string>();
  for (const [rank, { k, p, word }] of tests.toSorted((a, b) => a.p - b.p).entries()) {
    if (p > level / (tests.length - rank)) break;
    refused.set(k, `no: ${word}, p = ${p.toExponential(1)}`);
  }
  return hits.map((_, k) => refused.get(k) ?? 'yes');
}
/** P(X <= hit) for a binomial, by the beta distribution. */
const atMost = (hit: number, of: number, share: number): number =>
  hit >= of ? 1 : 1 - jstat.beta.cdf(share, hit + 1, of - hit);
/** P(X >= hit). */
export const atLeast = (hit: number, of: number, share: number): number =>
  hit === 0 ? 1 : jstat.beta.cdf(share, hit, of - hit + 1);
