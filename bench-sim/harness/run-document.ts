// SPDX-License-Identifier: MIT
// A run as one JSON document for programs, made from its record, with what its check proposes. It knows no check.
import type { Proposal } from '#checks/proposal';
import type { RunRecord } from '#core/record/run-record';
import { reasonOf } from '#core/record/run-reason';

type FindingOf = RunRecord['findings'][number];

export function runDocument(record: RunRecord, proposal: Proposal | null = null) {
  const truth = record.virtual?.truth;
  const reason = reasonOf(record);
  return {
    check: record.check,
    verdict: record.verdict,
    ...(reason && { reason }),
    ending: record.ending.kind,
    results: record.findings.map((finding) => resultOf(finding, record)),
    ...(proposal && { proposal }),
    ...(record.virtual && { seed: record.virtual.seed, faults: record.virtual.faults }),
    ...(truth && {
      truth: Object.fromEntries(record.findings.flatMap(({ id }) => (id in truth ? [[id, truth[id]]] : []))),
    }),
  };
}
function resultOf(finding: FindingOf, record: RunRecord) {
  const judged = record.judged.find(({ id }) => id === finding.id);
  const { limit, note } = judged ?? {};
  const told = limit && { min: limit.min, max: limit.max, kind: limit.kind, source: limit.source };
  const common = { id: finding.id, title: finding.title, unit: finding.unit };
  const verdict = judged?.verdict ?? 'not measured';
  if (!finding.measured)
    return {
      ...common,
      value: null,
      interval: null,
      ...(told && { limit: told }),
      verdict,
      reason: finding.reason,
    };
  const { value, interval, u, notes } = finding;
  return {
    ...common,
    value,
    interval: [...interval],
    u,
    ...(told && { limit: told }),
    verdict,
    ...(note && { note }),
    ...(notes.length > 0 && { notes }),
  };
}
