// SPDX-License-Identifier: MIT
// All a person is told of one result's history: since when, the baseline or what is missing for one, by how much the
// last run differs, and whether that is drift or scatter. It puts the pieces together and works out nothing itself.
import { baselineOf, baselineRuns, type BaselineAnswer } from './baseline.ts';
import { changeSince, changeWords, type Change } from './change.ts';
import { driftOf, type DriftAnswer } from './drift.ts';
import type { PartRef } from '../parts/identity.ts';
import { historyOf, type HistoryPoint, type Repair, type RunFindings } from './part-history.ts';

export interface HistoryReport {
  /** Runs since the last repair, and that repair. */
  readonly points: readonly HistoryPoint[];
  readonly since: Repair | null;
  /** Runs before it, kept but not compared with. */
  readonly earlier: readonly HistoryPoint[];
  readonly baseline: BaselineAnswer;
  readonly change: Change | null;
  readonly drift: DriftAnswer | null;
  readonly words: readonly string[];
}
export function historyReport(
  runs: readonly RunFindings[],
  part: PartRef,
  checkResultId: string,
  repairs: readonly Repair[] = [],
  count = baselineRuns,
): HistoryReport {
  const segments = historyOf(runs, part, checkResultId, repairs);
  const { since, points } = segments[segments.length - 1];
  const earlier = segments.slice(0, -1).flatMap((segment) => segment.points);
  const baseline = baselineOf(checkResultId, points, count);
  const begun = since ? [`Its history begins anew on ${since.at.slice(0, 10)}: ${since.words}.`] : [];
  if (!baseline.ready)
    return { points, since, earlier, baseline, change: null, drift: null, words: [...begun, baseline.words] };
  const compared = comparison(points, count);
  return { points, since, earlier, baseline, ...compared, words: [...begun, ...compared.words] };
}
function comparison(
  points: readonly HistoryPoint[],
  count: number,
): Pick<HistoryReport, 'change' | 'drift' | 'words'> {
  const [first, later] = [points.slice(0, count), points.slice(count)];
  const last = later.at(-1);
  const valuesOf = (list: readonly HistoryPoint[]) => list.map(({ finding }) => finding.value);
  const unit = first[0].finding.unit;
  const drift = driftOf(valuesOf(first), valuesOf(later), unit);
  const change = last ? changeSince(first, last) : null;
  const changed = change ? [changeWords(change, unit, count)] : [];
  return { change, drift, words: [...changed, drift.words] };
}
