// SPDX-License-Identifier: MIT
// A run as text for people: a table of results, the verdict, the reason, the cautions. It knows columns of text.
import type { Check } from '#checks/check';
import { proposalOf } from '#checks/proposal';
import type { RunRecord } from '#core/record/run-record';
import { figure, limitWords, reasonOf } from '#core/record/run-reason';

export function runText(record: RunRecord, check: Check): string {
  const reason = reasonOf(record);
  const proposal = proposalOf(check, record);
  const notes = new Set(record.findings.flatMap((finding) => (finding.measured ? finding.notes : [])));
  const lines = [
    `${check.title} (${check.id})`,
    `${record.car.name} on ${record.rig.descriptor.board}, firmware ${record.software.firmware}`,
    '',
    ...table([
      ['result', 'value', '95 % interval', 'limit', 'verdict'],
      ...record.findings.map((f) => row(f, record)),
    ]),
    '',
    `Verdict: ${capital(record.verdict)}`,
    ...(reason ? [`Reason: ${reason}`] : []),
    ...Array.from(notes, (note) => `Note: ${note}`),
    ...(proposal ? [`Proposal: ${proposal.words}`] : []),
    ...check.cautions.map((caution) => `Caution: ${caution}`),
  ];
  return `${lines.join('\n')}\n`;
}
function row(finding: RunRecord['findings'][number], { judged }: RunRecord): string[] {
  const mine = judged.find(({ id }) => id === finding.id);
  const limit = limitWords(mine?.limit);
  const verdict = capital(mine?.verdict ?? 'not measured');
  if (!finding.measured) return [finding.title, '-', '-', limit, verdict];
  const [low, high] = finding.interval;
  return [
    finding.title,
    `${figure(finding.value)} ${finding.unit}`,
    `${figure(low)} to ${figure(high)}`,
    limit,
    mine?.limit ? verdict : 'for information',
  ];
}
export function table(rows: readonly (readonly string[])[]): string[] {
  const widths = rows[0].map((_, column) => Math.max(...rows.map((cells) => cells[column].length)));
  return rows.map((cells) =>
    cells
      .map((cell, column) => cell.padEnd(widths[column]))
      .join('  ')
      .trimEnd(),
  );
}
const capital = (words: string): string => words[0].toUpperCase() + words.slice(1);
