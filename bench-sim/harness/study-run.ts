// SPDX-License-Identifier: MIT
// One cell of a study: one check on the emulated firmware with one seed and its faults, boiled down to what is
// counted. It knows no statistics.
import type { Check } from '#checks/check';
import type { RunRecord } from '#core/record/run-record';
import { runCheck } from '#session/check-runner';
import type { Faults } from '#sim/faults/faults';
import { openVirtual } from './bench-place.ts';
import { reasonOf } from './run-document.ts';

export interface Cell {
  readonly check: string;
  readonly seed: number;
  readonly faults: Faults;
}
export interface CellResult {
  readonly id: string;
  readonly unit: string;
  readonly verdict: string;
  readonly value: number | null;
  readonly interval: readonly [number, number] | null;
  readonly truth: number | null;
}
export interface CellOutcome extends Cell {
  readonly verdict: string;
  /** How the run ended: done, tripped, ... */
  readonly ending: string;
  readonly reason: string;
  readonly results: readonly CellResult[];
  readonly rigS: number;
  readonly wallS: number;
}
export async function runCell(check: Check, cell: Cell): Promise<CellOutcome> {
  const startMs = performance.now();
  const { session, car, hands, virtual } = await openVirtual(cell.seed, cell.faults);
  const label = { id: `${check.id} ${cell.seed}`, startedAt: new Date().toISOString(), tool: 'study' };
  const { record } = await runCheck(session, check, { car, label, ask: hands });
  const rigS = session.clock.now() / 1000;
  await session.close();
  return outcomeOf(record, cell, virtual.truth(), { rigS, wallS: (performance.now() - startMs) / 1000 });
}
/** What of a record and the truth beside it a study counts. */
export function outcomeOf(
  record: RunRecord,
  { seed, faults }: Cell,
  truth: Readonly<Record<string, number>>,
  took: { readonly rigS: number; readonly wallS: number },
): CellOutcome {
  return {
    check: record.check,
    seed,
    faults,
    verdict: record.verdict,
    ending: record.ending.kind,
    reason: reasonOf(record) ?? '',
    results: record.findings.map((finding) => ({
      id: finding.id,
      unit: finding.unit,
      verdict: record.judged.find(({ id }) => id === finding.id)?.verdict ?? 'not measured',
      value: finding.measured ? finding.value : null,
      interval: finding.measured ? finding.interval : null,
      truth: truth[finding.id] ?? null,
    })),
    ...took,
  };
}
