// SPDX-License-Identifier: MIT
// Makes findings and verdicts of a record again from its raw counts, calibration and evidence alone. It knows
// no check by name: the check is handed in.
import type { z } from 'zod';
import type { Finding } from '../measurements/measurement.ts';
import type { Car } from '../parts/part.ts';
import type { RigDescription } from '../samples/rig-description.ts';
import type { SampleStore } from '../samples/sample-store.ts';
import { judgeAll, overallVerdict } from '../verdicts/judge.ts';
import type { Judged, Limit, VerdictWord } from '../verdicts/limit.ts';
import { RecordError, samplesOf } from './record-reader.ts';
import type { RunRecord } from './run-record.ts';

/** What of a check is needed to judge again. */
export interface Judging {
  readonly id: string;
  readonly evidenceSchema: z.ZodType<unknown>;
  analyse(input: {
    evidence: never;
    samples: SampleStore;
    rig: RigDescription;
    car: Car;
  }): readonly Finding[];
  limits(car: Car, rig: RigDescription): Readonly<Record<string, Limit>>;
}
export interface Recomputed {
  readonly findings: readonly Finding[];
  readonly judged: readonly Judged[];
  readonly verdict: VerdictWord;
}
export function recompute(record: RunRecord, check: Judging): Recomputed {
  if (check.id !== record.check)
    throw new RecordError(`The record is of "${record.check}", not of "${check.id}".`);
  if (record.evidence === null)
    return { findings: record.findings, judged: record.judged, verdict: record.verdict };
  const evidence = check.evidenceSchema.safeParse(record.evidence);
  if (!evidence.success)
    throw new RecordError(
      `The record's evidence does not fit "${check.id}": ${evidence.error.issues[0].message}. It may come from another version.`,
    );
  const findings = check.analyse({
    evidence: evidence.data as never,
    samples: samplesOf(record),
    rig: record.rig,
    car: record.car,
  });
  const judged = judgeAll(findings, check.limits(record.car, record.rig));
  return { findings, judged, verdict: overallVerdict(judged) };
}
