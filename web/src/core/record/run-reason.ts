// SPDX-License-Identifier: MIT
// Why a run did not pass, in one sentence, from its record alone. It knows no check.
import type { RunRecord } from './run-record.ts';

/** Why the whole did not pass: how the run ended, else the first result that explains it. */
export function reasonOf(record: RunRecord): string | undefined {
  if (record.ending.kind !== 'done') return record.ending.words;
  const culprit = record.judged.find(({ verdict }) => verdict === record.verdict);
  if (record.verdict === 'pass' || !culprit) return undefined;
  const finding = record.findings.find(({ id }) => id === culprit.id);
  if (!finding) return undefined;
  if (!finding.measured) return finding.reason;
  return `${finding.title} is ${figure(finding.value)} ${finding.unit}; ${limitWords(culprit.limit)}${culprit.note ? ` ${culprit.note}` : ''}`;
}
export const figure = (value: number): string => String(Number(value.toPrecision(4)));
export function limitWords(limit: RunRecord['judged'][number]['limit']): string {
  if (!limit) return '';
  const bounds = [
    limit.min === undefined ? '' : `at least ${figure(limit.min)}`,
    limit.max === undefined ? '' : `at most ${figure(limit.max)}`,
  ].filter(Boolean);
  return `${bounds.join(', ')} ${limit.unit} (${limit.kind}: ${limit.source})`;
}
