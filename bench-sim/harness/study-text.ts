// SPDX-License-Identifier: MIT
// The figures of a study as text for people. It knows columns of text and runs nothing.
import { table } from './run-table.ts';
import type { Criterion } from './study-criteria.ts';
import type { DecisionCount } from './study-decisions.ts';
import type { Detection, DetectionSummary } from './study-detection.ts';
import type { Coverage, ResultSummary, VerdictCount } from './study-summary.ts';

export interface StudySummary {
  /** When it ran; of pooled studies the first and the last. */
  readonly date: string;
  readonly solved: boolean;
  readonly firstSeed: number;
  readonly seeds: number;
  readonly rigs: readonly RigsSummary[];
  /** Rig seconds a second of one worker. */
  readonly speed: number;
}
/** Of all rigs as declared, or of all calibrated ones. */
export interface RigsSummary {
  readonly calibrated: boolean;
  readonly pooled: Coverage;
  readonly results: readonly ResultSummary[];
  readonly decisions: readonly DecisionCount[];
  readonly criteria: readonly Criterion[];
  readonly verdicts: readonly VerdictCount[];
  readonly detection: DetectionSummary;
}
export function textOf({ date, solved, firstSeed, seeds, rigs, speed }: StudySummary): string {
  const runs = solved ? 'solved at the conversion instants' : 'on the emulated firmware';
  return [
    `Study of ${date}: seeds ${firstSeed} to ${firstSeed + seeds - 1} ${runs}, ${speed.toFixed(1)} rig seconds a second`,
    ...rigs.flatMap(rigsText),
    ...tightnessText(rigs),
  ].join('\n');
}
function rigsText(summary: RigsSummary): string[] {
  const { calibrated, results, verdicts } = summary;
  return [
    '',
    calibrated ? 'Rigs calibrated with a usual hand-held meter' : 'Rigs as declared, uncalibrated',
    '',
    ...(results.length > 0 ? coverageText(summary) : []),
    ...table([
      ['check', 'fault', 'severity', 'expected', 'got'],
      ...verdicts.map((v) => [v.check, v.fault, String(v.severity), v.expected, countsText(v.counts)]),
    ]),
    '',
    ...detectionText(summary.detection),
    ...verdicts.flatMap((v) => v.reasons.map((reason) => `${v.check} ${v.fault}=${v.severity}: ${reason}`)),
  ];
}
/** Of the cells without faults. */
function coverageText({ results, pooled, decisions, criteria }: RigsSummary): string[] {
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
/** A column a severity. */
function detectionText({ rows, missed, falseAlarms }: DetectionSummary): string[] {
  const tried = rows.flatMap(({ severities }) => severities.map(({ severity }) => severity));
  const columns = [...new Set(tried)].toSorted((a, b) => a - b);
  const heads = ['check', 'fault', 'must be', ...columns.map((severity) => `at ${severity}`), 'half from'];
  return [
    ...(rows.length > 0 ? [...table([heads, ...rows.map((row) => detectionCells(row, columns))]), ''] : []),
    ...(missed ? [`Missed at severity 1: ${shareText(missed)}`] : []),
    ...(falseAlarms ? [`Sound cars that failed or tripped: ${shareText(falseAlarms)}`, ''] : []),
  ];
}
function detectionCells(
  { check, fault, expected, severities, firstHalf }: Detection,
  columns: number[],
): string[] {
  const at = columns.map((column) => severities.find(({ severity }) => severity === column));
  const counts = at.map((found) => (found ? `${found.found}/${found.of}` : '-'));
  return [check, fault, expected, ...counts, String(firstHalf ?? '-')];
}
const shareText = (share: Coverage): string => `${share.inside} of ${share.of} (${boundsText(share)})`;
/** Half-widths side by side, medians over the seeds. */
function tightnessText(rigs: readonly RigsSummary[]): string[] {
  const rows = rigs[0].results.map(({ id }) => [
    id,
    ...rigs.flatMap(({ results }) => tightnessCells(results.find((result) => result.id === id))),
  ]);
  if (rows.length === 0) return [];
  const heads = rigs.flatMap(({ calibrated }) => [
    calibrated ? 'U calibrated' : 'U as declared',
    'largest line of its budget',
  ]);
  return ['', ...table([['result', ...heads], ...rows])];
}
function tightnessCells(result: ResultSummary | undefined): string[] {
  if (!result) return ['-', '-'];
  const { medianHalfWidthPerCent: u, largest } = result;
  const line = largest ? `${largest.source} (${(100 * largest.share).toFixed(0)} % of u2)` : '-';
  return [`${u.toFixed(2)} %`, line];
}
const boundsText = ({ bounds }: Coverage): string =>
  bounds.map((b) => `${(100 * b).toFixed(1)} %`).join(' to ');
const countsText = (counts: Readonly<Record<string, number>>): string =>
  Object.entries(counts)
    .map(([word, count]) => `${count} ${word}`)
    .join(', ');
