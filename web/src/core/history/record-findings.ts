// SPDX-License-Identifier: MIT
// What a part's history takes from a run's record. Runs on a virtual rig make no history of a real part: they count
// with their seed as the rig's number, so that they never mix. It knows records, no store.
import { partRefOf, type PartKind } from '../parts/part.ts';
import { rigSerialOf, type RunRecord } from '../record/run-record.ts';
import { virtualSerial } from '../record/virtual-truth.ts';
import type { RunFindings } from './part-history.ts';

type Recorded = Pick<
  RunRecord,
  'id' | 'check' | 'startedAt' | 'car' | 'rig' | 'findings' | 'judged' | 'virtual'
>;
/** `part` is the part that the record's check is of. */
export function runFindingsOf(record: Recorded, part: PartKind): RunFindings {
  return {
    runId: record.id,
    checkId: record.check,
    startedAt: record.startedAt,
    ...partRefOf(record.car, part),
    rigSerial: record.virtual ? virtualSerial(record.virtual.seed) : rigSerialOf(record),
    findings: record.findings,
    verdicts: Object.fromEntries(record.judged.map(({ id, verdict }) => [id, verdict])),
  };
}
