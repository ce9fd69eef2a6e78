// SPDX-License-Identifier: MIT
// Which faults were found at which severity, which sound cars were called faulty, with exact binomial bounds. It
// runs nothing.
import { faultTable } from '#sim/faults/faults';
import type { CellOutcome } from './study-run.ts';
import { coverageOf, expectedOf, grouped, wordOf, type Coverage } from './study-summary.ts';

export interface Detection {
  readonly check: string;
  readonly fault: string;
  /** What the check must say at severity 1. */
  readonly expected: string;
  /** In rising order. */
  readonly severities: readonly Found[];
  /** The least of these severities that half of the runs or more found, and every greater one too; null: none. */
  readonly firstHalf: number | null;
}
export interface Found {
  readonly severity: number;
  readonly found: number;
  readonly of: number;
}
export interface DetectionSummary {
  readonly rows: readonly Detection[];
  /** Of the runs at severity 1 of what is a fault; null without any. */
  readonly missed: Coverage | null;
  /** Of the runs of sound cars, those with what is no fault of theirs among them; null without any. */
  readonly falseAlarms: Coverage | null;
}
export function detectionOf(outcomes: readonly CellOutcome[]): DetectionSummary {
  const faulty = outcomes.filter(({ faults }) => Object.keys(faults).length > 0);
  const rows = [...grouped(faulty, faultOf)].map(([fault, runs]) => rowOf(fault, runs));
  return { rows, missed: missedOf(faulty), falseAlarms: falseAlarmsOf(outcomes) };
}
const faultOf = ({ faults }: CellOutcome): string => Object.keys(faults)[0] ?? '';
const severityOf = ({ faults }: CellOutcome): number => Object.values(faults)[0] ?? 0;
const isNoFault = (outcome: CellOutcome): boolean =>
  severityOf(outcome) === 0 || expectedOf(faultOf(outcome), 1) === 'pass';

/** Found by the verdict it must cause, and by the result that it spoils. */
export function isFound(outcome: CellOutcome): boolean {
  const row = faultTable.find(({ name }) => name === faultOf(outcome));
  const spoilt = outcome.results.find(({ id }) => id === row?.result);
  return wordOf(outcome) === expectedOf(faultOf(outcome), 1) && spoilt?.verdict !== 'pass';
}
function rowOf(fault: string, runs: readonly CellOutcome[]): Detection {
  const severities = [...grouped(runs, (run) => String(severityOf(run))).values()]
    .map((same) => ({ severity: severityOf(same[0]), found: same.filter(isFound).length, of: same.length }))
    .toSorted((a, b) => a.severity - b.severity);
  const lastMissed = severities.findLastIndex(({ found, of }) => 2 * found < of);
  const firstHalf = severities[lastMissed + 1]?.severity ?? null;
  return { check: runs[0].check, fault, expected: expectedOf(fault, 1), severities, firstHalf };
}
function missedOf(faulty: readonly CellOutcome[]): Coverage | null {
  const gross = faulty.filter((outcome) => severityOf(outcome) === 1 && !isNoFault(outcome));
  return gross.length === 0 ? null : coverageOf(gross.map((outcome) => !isFound(outcome)));
}
function falseAlarmsOf(outcomes: readonly CellOutcome[]): Coverage | null {
  const sound = outcomes.filter(isNoFault);
  return sound.length === 0 ? null : coverageOf(sound.map(isAlarm));
}
const isAlarm = (outcome: CellOutcome): boolean => ['fail', 'tripped'].includes(wordOf(outcome));
