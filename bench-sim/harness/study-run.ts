// SPDX-License-Identifier: MIT
// One cell of a study: one check on the emulated firmware with one seed and its faults, boiled down to what is
// counted. It knows no statistics.
import type { Check } from '#checks/check';
import type { Finding } from '#core/measurements/measurement';
import type { VerdictWord } from '#core/verdicts/limit';
import type { RunRecord } from '#core/record/run-record';
import { runCheck } from '#session/check-runner';
import type { Faults } from '#sim/faults/faults';
import { openVirtual } from './bench-place.ts';
import { calibrateVirtual } from './virtual-calibration.ts';
import { reasonOf } from '#core/record/run-reason';

export interface Cell {
  readonly check: string;
  readonly seed: number;
  readonly faults: Faults;
}
/** How a study runs its cells. */
export interface StudyWay {
  /** Without the processor, at the instants of a logged run. */
  readonly solved: boolean;
  /** Every car twice: on the rig as declared, and on the same rig calibrated with a usual hand-held meter. */
  readonly calibrated: boolean;
}
export interface CellResult {
  readonly id: string;
  readonly unit: string;
  readonly verdict: string;
  readonly value: number | null;
  readonly interval: readonly [number, number] | null;
  readonly truth: number | null;
  /** What the decision rule says when the truth stands exactly at an upper and at a lower limit, and two
   *  half-widths inside either; null without value or truth. */
  readonly placed: Placed | null;
  /** The line of its budget that weighs most, with its share of the variance; null without a value. */
  readonly largest: LargestLine | null;
}
export interface LargestLine {
  readonly source: string;
  readonly share: number;
}
export interface Placed {
  readonly atLimit: readonly VerdictWord[];
  readonly inside: readonly VerdictWord[];
}
export interface CellOutcome extends Cell {
  readonly calibrated: boolean;
  readonly verdict: string;
  /** How the run ended: done, tripped, ... */
  readonly ending: string;
  readonly reason: string;
  readonly results: readonly CellResult[];
  readonly rigS: number;
  readonly wallS: number;
}
export async function runCell(check: Check, cell: Cell, { calibrated }: StudyWay): Promise<CellOutcome[]> {
  const plain = await runOnRig(check, cell);
  if (!calibrated) return [plain];
  const { store } = await calibrateVirtual(cell.seed);
  return [plain, await runOnRig(check, cell, store)];
}
async function runOnRig(check: Check, cell: Cell, store?: Uint8Array): Promise<CellOutcome> {
  const startMs = performance.now();
  const { session, car, hands, virtual } = await openVirtual(cell.seed, cell.faults, { store });
  const label = { id: `${check.id} ${cell.seed}`, startedAt: new Date().toISOString(), tool: 'study' };
  const { record } = await runCheck(session, check, { car, label, ask: hands });
  const rigS = session.clock.now() / 1000;
  await session.close();
  const took = { rigS, wallS: (performance.now() - startMs) / 1000 };
  return outcomeOf(record, { ...cell, calibrated: store !== undefined }, virtual.truth(), took);
}
/** What of a record and the truth beside it a study counts. */
export function outcomeOf(
  record: RunRecord,
  { seed, faults, calibrated }: Cell & { readonly calibrated: boolean },
  truth: Readonly<Record<string, number>>,
  took: { readonly rigS: number; readonly wallS: number },
): CellOutcome {
  return {
    check: record.check,
    seed,
    faults,
    calibrated,
    verdict: record.verdict,
    ending: record.ending.kind,
    reason: reasonOf(record) ?? '',
    results: record.findings.map((finding) =>
      cellResult(
        finding,
        truth[finding.id],
        record.judged.find(({ id }) => id === finding.id)?.verdict ?? 'not measured',
      ),
    ),
    ...took,
  };
}

function largestLine(finding: Finding): LargestLine | null {
  if (!finding.measured || finding.budget.length === 0) return null;
  const variance = finding.budget.reduce((sum, { u }) => sum + u ** 2, 0);
  const { source, u } = finding.budget.reduce((most, line) => (line.u > most.u ? line : most));
  return { source, share: u ** 2 / variance };
}
export const cellResult = (finding: Finding, truth: number | undefined, verdict: string): CellResult => ({
  id: finding.id,
  unit: finding.unit,
  verdict,
  value: finding.measured ? finding.value : null,
  interval: finding.measured ? finding.interval : null,
  truth: truth ?? null,
  placed: placedAt(finding, truth),
  largest: largestLine(finding),
});
/** For one bound the rule "at most 2.5 % beyond" is the 95 % interval keeping clear of it; see verdicts/judge.ts. */
function placedAt(finding: Finding, truth: number | undefined): Placed | null {
  if (!finding.measured || truth === undefined) return null;
  const [low, high] = finding.interval;
  // A count is known without error: no limit is near it.
  if (low === high) return null;
  const below = (max: number): VerdictWord => (high <= max ? 'pass' : low >= max ? 'fail' : 'undecided');
  const above = (min: number): VerdictWord => (low >= min ? 'pass' : high <= min ? 'fail' : 'undecided');
  const twoU = high - low;
  return {
    atLimit: [below(truth), above(truth)],
    inside: [below(truth + twoU), above(truth - twoU)],
  };
}
