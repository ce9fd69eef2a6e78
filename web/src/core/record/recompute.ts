// SPDX-License-Identifier: MIT
// Makes findings and verdicts of a record again from its raw counts, calibration and evidence alone. It knows
// no check by name: the check is handed in.
import { namedOrId } from '../titles/check-titles.ts';
import type { z } from 'zod';
import { judgedFindings, type JudgedFindings, type Judging } from './judged-findings.ts';
import { RecordError, samplesOf } from './record-reader.ts';
import { rigSerialOf, type RunRecord } from './run-record.ts';

export interface Recomputing extends Judging {
  readonly id: string;
  readonly evidenceSchema: z.ZodType<unknown>;
}
export function recompute(record: RunRecord, check: Recomputing): JudgedFindings {
  if (check.id !== record.check)
    throw new RecordError(`The record is of ${namedOrId(record.check)}, not of ${namedOrId(check.id)}.`);
  if (record.evidence === null)
    return { findings: record.findings, judged: record.judged, verdict: record.verdict };
  const evidence = check.evidenceSchema.safeParse(record.evidence);
  if (!evidence.success)
    throw new RecordError(
      `The record's evidence does not fit ${namedOrId(check.id)}: ${evidence.error.issues[0].message}. It may come from another version.`,
    );
  return judgedFindings(check, {
    evidence: evidence.data,
    samples: samplesOf(record),
    rig: record.rig,
    car: record.car,
    rigSerial: rigSerialOf(record),
    meter: record.meter,
  });
}
