// SPDX-License-Identifier: MIT
// What a part's page tells of one result over its runs: the history's own words, whether its first runs may become the
// part's own limits, and what stands kept. It puts the core's pieces together and works out nothing itself.
import { baselineLimit, baselineOf, baselineRuns, type Baseline } from '#core/history/baseline';
import { historyReport } from '#core/history/history-report';
import { historyOf, type HistorySegment, type Repair, type RunFindings } from '#core/history/part-history';
import type { DriftAnswer } from '#core/history/drift';
import { isOfPart, type PartRef } from '#core/parts/identity';
import type { Car } from '#core/parts/part';
import { tapsNamed } from '#core/samples/tap-titles';
import type { Limit } from '#core/verdicts/limit';
import { limitRange } from './run-summary.ts';
import { shownFindings } from './shown-findings.ts';

/** From so many accepted runs on they may be made the part's own limits; five are usual. */
export const leastRuns = 3;

export interface BaselineOffer {
  /** "3 accepted runs: make them this part's own limits". */
  readonly words: string;
  /** What the limit would be, and what else to know of it. */
  readonly detail: string;
  readonly baseline: Baseline;
}
export interface PartTrend {
  readonly segments: readonly HistorySegment[];
  readonly words: readonly string[];
  readonly drift: DriftAnswer | null;
  /** Runs that the limits of the chart are made of, from the first of the last segment on. */
  readonly first: number;
  readonly offer: BaselineOffer | null;
  readonly kept: { readonly baseline: Baseline; readonly words: string } | null;
}
export interface TrendOf {
  readonly runs: readonly RunFindings[];
  readonly part: PartRef;
  readonly key: string;
  readonly repairs: readonly Repair[];
  readonly car: Car;
  /** The limit that holds now, if any. */
  readonly holds: Limit['kind'] | null;
}
export function partTrend({ runs, part, key, repairs, car, holds }: TrendOf): PartTrend {
  const segments = historyOf(runs, part, key, repairs);
  const { since, points } = segments[segments.length - 1];
  const kept = keptBaseline(car, key, part, since);
  const first = kept?.runIds.length ?? baselineRuns;
  const offer = offerOf(key, points, kept, holds);
  // With an offer there is no need to say what is missing for one.
  const report = historyReport(shownFindings(runs, key), part, key, repairs, first);
  return {
    segments,
    words: (report.baseline.ready || !offer ? report.words : report.words.slice(0, -1)).map(tapsNamed),
    drift: report.drift,
    first,
    offer,
    kept: kept && { baseline: kept, words: keptWords(kept) },
  };
}
/** Of this very part, and not of before its last repair. */
function keptBaseline(car: Car, key: string, part: PartRef, since: Repair | null): Baseline | null {
  const found = car.baselines?.find(({ checkResultId }) => checkResultId === key);
  if (!found || !isOfPart(found, part)) return null;
  return since && found.fromDate < since.at.slice(0, 10) ? null : found;
}
function offerOf(
  key: string,
  points: HistorySegment['points'],
  kept: Baseline | null,
  holds: Limit['kind'] | null,
): BaselineOffer | null {
  const count = Math.min(points.length, baselineRuns);
  if (count < leastRuns || (kept && kept.runIds.length >= count)) return null;
  const answer = baselineOf(key, points, count);
  if (!answer.ready) return null;
  const { baseline } = answer;
  const few = count < baselineRuns ? ` ${baselineRuns} are usual: from ${count} runs they are wide.` : '';
  return {
    words: `${count} accepted runs: make them this part's own limits`,
    detail: `They would be ${limitRange(baselineLimit(baseline), baseline.centre)}.${few}${behind(holds)}`,
    baseline,
  };
}
const behind = (holds: Limit['kind'] | null): string =>
  holds === 'rating' || holds === 'own override'
    ? ` ${holds === 'rating' ? 'The rating on its label' : 'Your own limit'} goes first; they stand behind it and tell drift.`
    : '';
const keptWords = (baseline: Baseline): string =>
  `Own limits from ${baseline.runIds.length} runs, ${baseline.fromDate} to ${baseline.toDate}: ${limitRange(baselineLimit(baseline), baseline.centre)}.`;

export const runCount = ({ segments }: PartTrend): number =>
  segments.reduce((sum, { points }) => sum + points.length, 0);

/** What moved comes before what only scatters, more runs before fewer. */
export function worthShowing(trend: PartTrend): number {
  const moved = trend.drift?.kind === 'drift' || trend.drift?.kind === 'step';
  return runCount(trend) + (moved ? 1000 : 0);
}
const others = ({ baselines = [] }: Car, key: string) =>
  baselines.filter(({ checkResultId }) => checkResultId !== key);
export const withBaseline = (car: Car, baseline: Baseline): Car => ({
  ...car,
  baselines: [...others(car, baseline.checkResultId), baseline],
});
export const withoutBaseline = (car: Car, key: string): Car => ({ ...car, baselines: others(car, key) });
