// SPDX-License-Identifier: MIT
// Why the servo runs hot, from the newest run of every check that says something of it; the ranking is the core's.
// It brings the learnt figures along: screens load it when they need it. Pure.
import {
  chanceWords,
  diagnose,
  type Diagnosis,
  type Evidence,
  type RankedCause,
} from '#core/diagnosis/diagnosis';
import { ruledOutWords } from '#core/diagnosis/diagnosis-text';
import { features } from '#core/diagnosis/features';
import type { Car } from '#core/parts/part';
import { findingOf, newestRuns, type ShownCheck } from './part-runs.ts';
import type { RunSummary } from './run-summary.ts';

export interface EvidenceView {
  readonly words: string;
  readonly side: 'for' | 'against';
  /** 1 to 3. */
  readonly squares: number;
  readonly bits: number;
  readonly runId: string;
}
export interface CauseView {
  readonly id: string;
  readonly title: string;
  readonly likely: RankedCause['likely'];
  /** "93 %". */
  readonly chance: string;
  readonly todo: string;
  readonly evidence: readonly EvidenceView[];
}
export interface DiagnosisView {
  readonly told: readonly CauseView[];
  /** One sentence of all that are ruled out, null where none is. */
  readonly ruledOut: string | null;
  readonly heard: readonly string[];
  readonly next: Diagnosis['next'][number] | null;
  /** Bits at the end of a beam. */
  readonly mostBits: number;
}
const heardChecks = new Set(features.map(({ check }) => check));

/** Null while no check of the servo was run. */
export function servoDiagnosis(
  runs: readonly RunSummary[],
  checks: readonly ShownCheck[],
  car: Car,
): DiagnosisView | null {
  const newest = newestRuns(
    runs,
    checks.filter(({ id }) => heardChecks.has(id)),
    car,
  );
  if (!newest.some(({ part }) => part === 'servo')) return null;
  const found = diagnose(
    newest.map(({ checkId, results }) => ({ check: checkId, findings: results.map(findingOf) })),
    car,
  );
  const runOf = new Map(newest.map(({ checkId, id }) => [checkId, id]));
  const all = found.ranked.map((each) => causeView(each, runOf));
  const told = all.filter(({ likely }) => likely !== 'ruled out');
  const out = all.filter(({ likely }) => likely === 'ruled out');
  return {
    told,
    ruledOut: out.length > 0 ? ruledOutWords(out.map(({ title }) => title)) : null,
    heard: found.heard,
    next: found.next.find(({ check }) => checks.some(({ id }) => id === check)) ?? null,
    mostBits: Math.max(
      1,
      ...told.flatMap(({ evidence }) => [sideBits(evidence, 'for'), sideBits(evidence, 'against')]),
    ),
  };
}
export const sideBits = (evidence: readonly EvidenceView[], side: EvidenceView['side']): number =>
  evidence.filter((each) => each.side === side).reduce((sum, { bits }) => sum + bits, 0);

function causeView(
  { cause, likely, probability, ...sides }: RankedCause,
  runOf: ReadonlyMap<string, string>,
): CauseView {
  const view = (side: EvidenceView['side']) => (each: Evidence) => evidenceView(each, side, runOf);
  const evidence = [...sides.evidenceFor.map(view('for')), ...sides.evidenceAgainst.map(view('against'))];
  return { ...cause, likely, chance: chanceWords(probability), evidence };
}
function evidenceView(
  { words, bits, check }: Evidence,
  side: EvidenceView['side'],
  runOf: ReadonlyMap<string, string>,
): EvidenceView {
  const size = Math.abs(bits);
  return {
    words,
    side,
    squares: size < 1.5 ? 1 : size < 3 ? 2 : 3,
    bits: size,
    runId: runOf.get(check) ?? '',
  };
}
