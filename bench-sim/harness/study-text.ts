// SPDX-License-Identifier: MIT
// The figures of a study as text for people. It knows columns of text and runs nothing.
import { table } from './run-table.ts';
import type { Criterion } from './study-criteria.ts';
import type { DecisionCount } from './study-decisions.ts';
import type { Coverage, ResultSummary, VerdictCount } from './study-summary.ts';

export interface StudySummary {
  /** When it ran; of pooled studies the first and the last. */
  readonly date: string;
  readonly solved: boolean;
  readonly calibrated: boolean;
  readonly firstSeed: number;
  readonly seeds: number;
  readonly pooled: Coverage;
  readonly results: readonly ResultSummary[];
  readonly decisions: readonly DecisionCount[];
  readonly criteria: readonly Criterion[];
  readonly verdicts: readonly VerdictCount[];
  /** Rig seconds a second of one worker. */
  readonly speed: number;
}
export function textOf(summary: StudySummary): string {
  const { date, solved, calibrated, firstSeed, seeds, results, verdicts, speed } = summary;
  const runs = solved ? 'solved at the conversion instants' : 'on the emulated firmware';
  const rigs = calibrated ? 'calibrated rigs' : 'uncalibrated rigs';
  return [
    `Study of ${date}: seeds ${firstSeed} to ${firstSeed + seeds - 1} ${runs}, ${rigs}, ${speed.toFixed(1)} rig seconds a second`,
    '',
    ...(results.length > 0 ? coverageText(summary) : []),
    ...table([
      ['check', 'fault', 'severity', 'expected', 'got'],
      ...verdicts.map((v) => [v.check, v.fault, String(v.severity), v.expected, countsText(v.counts)]),
    ]),
    '',
    ...verdicts.flatMap((v) => v.reasons.map((reason) => `${v.check} ${v.fault}=${v.severity}: ${reason}`)),
    '',
  ].join('\n');
}
/** Of the cells without faults. */
function coverageText({ results, pooled, decisions, criteria }: StudySummary): string[] {
  return [
    ...table([
      ['result', 'truth inside', '95 % bounds', 'half-width', 'worst', 'error/half-width', 'worst', 'values'],
      ...results.map((r) => [
        r.id,
        `${r.inside}/${r.of}`,
        boundsText(r),
        `${r.medianHalfWidthPerCent.toFixed(2)} %`,
        `${r.worstHalfWidthPerCent.toFixed(2)} %`,
        r.medianErrorShare.toFixed(2),
        r.worstErrorShare.toFixed(2),
        `${r.valueRange.map((v) => Number(v.toPrecision(3))).join(' to ')} ${r.unit}`,
      ]),
    ]),
    '',
    `Pooled: ${pooled.inside} of ${pooled.of} inside, ${(100 * pooled.share).toFixed(1)} % (${boundsText(pooled)})`,
    '',
    ...table([
      ['result', 'exactly at its limit: passed', 'inside by two U: undecided', '95 to 98.5 %, Holm'],
      ...decisions.map((d) => [
        d.id,
        `${d.atLimitPassed}/${d.atLimit}`,
        `${d.insideUndecided}/${d.inside}`,
        d.compatible,
      ]),
    ]),
    '',
    ...table([['criterion', 'met', 'found'], ...criteria.map((c) => [c.words, c.met, c.found])]),
    '',
  ];
}
const boundsText = ({ bounds }: Coverage): string =>
  bounds.map((b) => `${(100 * b).toFixed(1)} %`).join(' to ');
const countsText = (counts: Readonly<Record<string, number>>): string =>
  Object.entries(counts)
    .map(([word, count]) => `${count} ${word}`)
    .join(', ');
