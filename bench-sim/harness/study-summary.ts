// SPDX-License-Identifier: MIT
// The figures of a study: how often the truth lies inside the interval, with the exact binomial bounds of Clopper
// and Pearson (Biometrika 26, 1934), how tight the intervals are, and the verdicts of each fault. It runs nothing.
import jstat from 'jstat';
import { quantileSorted } from 'simple-statistics';
import { faultTable } from '#sim/faults/faults';
import type { CellOutcome, LargestLine } from './study-run.ts';

export interface Coverage {
  readonly inside: number;
  readonly of: number;
  readonly share: number;
  readonly bounds: readonly [number, number];
}
export interface ResultSummary extends Coverage {
  readonly check: string;
  readonly id: string;
  readonly unit: string;
  /** Half-width of the interval over the value, per cent: median and worst. */
  readonly medianHalfWidthPerCent: number;
  readonly worstHalfWidthPerCent: number;
  /** Error over half-width of the interval: median, to see a bias; worst magnitude. */
  readonly medianErrorShare: number;
  readonly worstErrorShare: number;
  readonly valueRange: readonly [number, number];
  /** The budget line that weighs most in most cells, and its share of the variance there: median. */
  readonly largest: LargestLine | null;
}
export interface VerdictCount {
  readonly check: string;
  readonly fault: string;
  readonly severity: number;
  readonly expected: string;
  readonly counts: Readonly<Record<string, number>>;
  readonly reasons: readonly string[];
}
/** Exact two-sided 95 % bounds of a share. */
export function clopperPearson(inside: number, of: number): [number, number] {
  const low = inside === 0 ? 0 : jstat.beta.inv(0.025, inside, of - inside + 1);
  const high = inside === of ? 1 : jstat.beta.inv(0.975, inside + 1, of - inside);
  return [low, high];
}
export const shareOf = (inside: number, of: number): Coverage => ({
  inside,
  of,
  share: inside / of,
  bounds: clopperPearson(inside, of),
});
export const coverageOf = (hits: readonly boolean[]): Coverage =>
  shareOf(hits.filter(Boolean).length, hits.length);
interface Held {
  readonly value: number;
  readonly interval: readonly [number, number];
  readonly truth: number;
  readonly largest: LargestLine | null;
}
const hit = ({ interval: [low, high], truth }: Held): boolean => truth >= low && truth <= high;
const heldOf = (outcome: CellOutcome, id: string): Held[] =>
  outcome.results.flatMap((result) =>
    result.id === id && result.value !== null && result.interval && result.truth !== null
      ? [{ ...result, value: result.value, interval: result.interval, truth: result.truth }]
      : [],
  );
const isHealthy = ({ faults }: CellOutcome): boolean => Object.keys(faults).length === 0;

/** Over the cells without faults: one line a result that has a truth. */
export function resultSummaries(outcomes: readonly CellOutcome[]): ResultSummary[] {
  const healthy = outcomes.filter(isHealthy);
  const names = new Map(
    healthy.flatMap(({ check, results }) => results.map(({ id, unit }) => [id, { check, unit }] as const)),
  );
  return [...names].flatMap(([id, { check, unit }]) => {
    const held = healthy.flatMap((outcome) => heldOf(outcome, id));
    return held.length === 0 ? [] : [{ check, id, unit, ...coverageOf(held.map(hit)), ...tightness(held) }];
  });
}
export function pooledCoverage(outcomes: readonly CellOutcome[]): Coverage {
  const held = outcomes.filter(isHealthy).flatMap((o) => o.results.flatMap(({ id }) => heldOf(o, id)));
  return coverageOf(held.map(hit));
}
function tightness(held: readonly Held[]) {
  const sorted = (values: number[]) => values.toSorted((a, b) => a - b);
  const half = ({ interval: [low, high] }: Held) => (high - low) / 2;
  const widths = sorted(held.map((one) => (100 * half(one)) / Math.abs(one.value)));
  const errors = sorted(held.map((one) => (one.value - one.truth) / half(one)));
  const values = sorted(held.map(({ value }) => value));
  return {
    medianHalfWidthPerCent: quantileSorted(widths, 0.5),
    worstHalfWidthPerCent: widths.at(-1) ?? Number.NaN,
    medianErrorShare: quantileSorted(errors, 0.5),
    worstErrorShare: Math.max(...errors.map(Math.abs)),
    valueRange: [values[0], values.at(-1) ?? Number.NaN] as const,
    largest: largestOf(held.flatMap(({ largest }) => largest ?? [])),
  };
}
function largestOf(lines: readonly LargestLine[]): LargestLine | null {
  if (lines.length === 0) return null;
  const bySource = grouped(lines, ({ source }) => source);
  const [source, most] = [...bySource].reduce((a, b) => (b[1].length > a[1].length ? b : a));
  const shares = most.map(({ share }) => share).toSorted((a, b) => a - b);
  return { source, share: quantileSorted(shares, 0.5) };
}
/** A trip or another end is counted by its name, since its results are not measured. */
export const wordOf = ({ ending, verdict }: CellOutcome): string =>
  ending === 'done' || ending === 'failed' ? verdict : ending;

export function verdictCounts(outcomes: readonly CellOutcome[]): VerdictCount[] {
  const cellKind = ({ check, faults }: CellOutcome) =>
    JSON.stringify([check, ...Object.entries(faults).flat()]);
  return [...grouped(outcomes, cellKind).values()].map((group) => {
    const [fault = '-', severity = 0] = Object.entries(group[0].faults)[0] ?? [];
    const words = [...grouped(group, wordOf)];
    return {
      check: group[0].check,
      fault,
      severity,
      expected: expectedOf(fault, severity),
      counts: Object.fromEntries(words.map(([word, members]) => [word, members.length])),
      reasons: reasonsOf(group),
    };
  });
}
export function expectedOf(fault: string, severity: number): string {
  const verdict = faultTable.find(({ name }) => name === fault)?.verdict;
  if (severity === 0 || !verdict) return 'pass';
  return verdict === 'notMeasured' ? 'not measured' : verdict;
}
export function grouped<T>(items: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) groups.set(keyOf(item), [...(groups.get(keyOf(item)) ?? []), item]);
  return groups;
}
/** The reasons of what did not pass, each with the first seed that had it. */
function reasonsOf(group: readonly CellOutcome[]): string[] {
  const told = new Map<string, string>();
  for (const outcome of group) {
    const key = `${wordOf(outcome)}: ${outcome.reason.replaceAll(/[\d.]+/g, '#')}`;
    if (outcome.reason && !told.has(key))
      told.set(key, `seed ${outcome.seed}, ${wordOf(outcome)}: ${outcome.reason}`);
  }
  return [...told.values()];
}
