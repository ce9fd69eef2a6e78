// SPDX-License-Identifier: MIT
// One result of a record as its summary keeps it, with everything in its own unit. Pure; judges nothing itself.
import type { BudgetLine, Finding } from '#core/measurements/measurement';
import type { Judged, VerdictWord } from '#core/verdicts/limit';
import type { ResultLine } from './run-summary.ts';

/** What a record found, and what of it was held against a limit. */
export interface JudgedRecord {
  readonly findings: readonly Finding[];
  readonly judged: readonly Judged[];
}
export interface Standing {
  readonly verdict: VerdictWord;
  /** False for a result that only informs: it has no limit. */
  readonly judged: boolean;
}
export const standingOf = ({ measured }: Finding, judged: Judged | undefined): Standing => ({
  verdict: judged?.verdict ?? (measured ? 'pass' : 'not measured'),
  judged: judged?.limit !== undefined || !measured,
});
export const resultLines = ({ findings, judged }: JudgedRecord): ResultLine[] =>
  findings.map((finding) =>
    resultLine(
      finding,
      judged.find(({ id }) => id === finding.id),
    ),
  );
const keptLine = ({ dof, ...line }: BudgetLine) => ({ ...line, dof: Number.isFinite(dof) ? dof : null });

function resultLine(finding: Finding, judged: Judged | undefined): ResultLine {
  const { id, title, unit } = finding;
  const shared = {
    id,
    title,
    unit,
    ...standingOf(finding, judged),
    note: judged?.note,
    limit: judged?.limit,
  };
  if (!finding.measured) return { ...shared, reason: finding.reason };
  const { value, interval, condition, u, budget } = finding;
  return {
    ...shared,
    value,
    interval: [interval[0], interval[1]],
    condition,
    u,
    budget: budget.map(keptLine),
  };
}
