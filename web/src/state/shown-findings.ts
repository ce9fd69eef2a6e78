// SPDX-License-Identifier: MIT
// The findings of one result as if they had been told in the unit that they are shown in, so that sentences made of
// them speak that unit. For words only: limits and judgements are made of the findings as they are. Pure.
import type { Finding } from '#core/measurements/measurement';
import type { RunFindings } from '#core/history/part-history';
import type { ShownUnit } from '#core/units/shown-unit';
import { shownUnit } from './figures.ts';

/** `key`: "servo-heat/case-temperature". All of them in one unit, which the newest one's size picks. */
export function shownFindings(runs: readonly RunFindings[], key: string): RunFindings[] {
  const [checkId, resultId] = key.split('/');
  const of = runs.filter((run) => run.checkId === checkId);
  const size = of.flatMap(({ findings }) => findings.find(({ id }) => id === resultId) ?? []).at(-1);
  if (!size?.measured) return [...runs];
  const shown = shownUnit(size.unit, size.value);
  return of.map((run) => ({
    ...run,
    findings: run.findings.map((finding) => (finding.id === resultId ? inUnit(finding, shown) : finding)),
  }));
}
function inUnit(finding: Finding, { unit, value, difference }: ShownUnit): Finding {
  if (!finding.measured) return { ...finding, unit };
  const { interval, budget } = finding;
  return {
    ...finding,
    unit,
    value: value(finding.value),
    u: difference(finding.u),
    interval: [value(interval[0]), value(interval[1])],
    budget: budget.map((line) => ({ ...line, u: difference(line.u) })),
  };
}
