// SPDX-License-Identifier: MIT
// From a run that ended, well or not, to its record: findings judged against the check's limits, or every result
// not measured with the reason. Evidence is taken as the record will keep it, so that both give the same figures.
import type { Check } from '#checks/check';
import type { Meter } from '#core/calibration/meter';
import type { Car } from '#core/parts/part';
import { judgedFindings, type JudgedFindings, type Judging } from '#core/record/judged-findings';
import { packColumns } from '#core/record/packed-columns';
import { recordFormat, recordVersion, type RunRecord } from '#core/record/run-record';
import type { RigDescription } from '#core/samples/rig-description';
import type { ScanColumns } from '#core/samples/scan-columns';
import { judgeAll, overallVerdict } from '#core/verdicts/judge';
import type { LoggedEvent } from './run-log.ts';
import type { EndingKind } from './run-stopped.ts';
import { asRunStopped, RunStopped } from './run-stopped.ts';

export interface RunLabel {
  readonly id: string;
  /** ISO 8601, the computer's clock. */
  readonly startedAt: string;
  readonly tool: string;
  readonly firmware: string;
  /** Number of the rig, where its own store is not the place for it. */
  readonly rigSerial?: string;
}
export interface Ran {
  readonly check: Check;
  readonly car: Car;
  readonly rig: RigDescription;
  readonly samples: ScanColumns;
  readonly events: readonly LoggedEvent[];
  /** The person's, for what a calibration would bring. */
  readonly meter?: Meter;
  /** What the procedure returned, or why it did not. */
  readonly outcome: { readonly evidence: unknown } | RunStopped;
}
type Ending = { kind: 'done' | EndingKind; words: string };

export function reportOf(ran: Ran, label: RunLabel): RunRecord {
  const { check, car, rig, samples, events, meter } = ran;
  const { findings, judged, verdict, evidence, ending } = found(ran, label.rigSerial);
  return {
    format: recordFormat,
    version: recordVersion,
    id: label.id,
    check: check.id,
    startedAt: label.startedAt,
    ending,
    software: { tool: label.tool, firmware: label.firmware },
    car,
    rig: {
      descriptor: rig.descriptor,
      store: rig.store,
      ...(label.rigSerial !== undefined && { serial: label.rigSerial }),
    },
    ...(meter && { meter }),
    clock: { ...samples.clock },
    raw: packColumns(samples.raw),
    marks: [...samples.marks],
    events: [...events],
    evidence,
    findings: findings as RunRecord['findings'],
    judged: judged as RunRecord['judged'],
    verdict,
  };
}
interface Found extends JudgedFindings {
  readonly evidence: unknown;
  readonly ending: Ending;
}
function found(ran: Ran, rigSerial?: string): Found {
  const { check, car, rig, outcome } = ran;
  if (outcome instanceof RunStopped) return unmeasured(check, car, rig, outcome);
  const evidence = asKept(outcome.evidence);
  try {
    const ending = { kind: 'done', words: 'The check ran to its end.' } as const;
    return { ...analysed(ran, evidence, rigSerial), evidence, ending };
  } catch (thrown) {
    return unmeasured(check, car, rig, asRunStopped(thrown));
  }
}
function analysed(
  { check, samples, rig, car, meter }: Ran,
  kept: unknown,
  rigSerial?: string,
): JudgedFindings {
  const evidence = check.evidenceSchema.safeParse(kept);
  if (!evidence.success) {
    const [issue] = evidence.error.issues;
    throw new TypeError(`the evidence of "${check.id}" at ${issue.path.join('.')}: ${issue.message}`);
  }
  const all = judgedFindings(check as Judging, {
    evidence: evidence.data,
    samples,
    rig,
    car,
    rigSerial,
    meter,
  });
  const forgotten = check.results.filter(({ id }) => !all.findings.some((finding) => finding.id === id));
  if (forgotten.length > 0)
    throw new TypeError(
      `the analysis of "${check.id}" told nothing of ${forgotten.map(({ id }) => id).join(', ')}`,
    );
  return all;
}
function unmeasured(check: Check, car: Car, rig: RigDescription, { kind, message }: RunStopped): Found {
  const findings = check.results.map((result) => ({ measured: false as const, ...result, reason: message }));
  const judged = judgeAll(findings, check.limits(car, rig));
  return {
    findings,
    judged,
    verdict: overallVerdict(judged),
    evidence: null,
    ending: { kind, words: message },
  };
}
/** As JSON keeps it: typed arrays become lists, NaN becomes null. */
function asKept(evidence: unknown): unknown {
  return JSON.parse(
    JSON.stringify(evidence ?? null, (_, value: unknown) =>
      ArrayBuffer.isView(value) ? Array.from(value as Float64Array) : value,
    ),
  );
}
