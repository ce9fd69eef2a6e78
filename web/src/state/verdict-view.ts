// SPDX-License-Identifier: MIT
// One result as the verdict screen shows it, worked out from the finding and its judgement: headline, budget
// lines by share of variance, evidence, what would settle it. Pure; judges nothing itself.
import type { EvidenceStretch, Finding } from '#core/measurements/measurement';
import type { Judged, VerdictWord } from '#core/verdicts/limit';
import { budgetRows, type BudgetRow } from './budget-rows.ts';
import { liveFigure, reading, shownUnit, type Reading } from './figures.ts';
import { limitOrigin, type LimitOrigin } from './limit-origin.ts';
import { standingOf, type JudgedRecord } from './result-line.ts';
import { limitRange, limitWords } from './run-summary.ts';
import { tapsNamed, tapWords } from '#core/samples/tap-titles';
import { verdictPicture, type VerdictPicture } from './verdict-picture.ts';

export interface ResultView {
  readonly id: string;
  readonly title: string;
  readonly verdict: VerdictWord;
  readonly judged: boolean;
  readonly reading: Reading | null;
  /** What the verdict means here, or why there is no number. */
  readonly sentence: string;
  readonly limit: string | null;
  readonly limitSource: string | null;
  /** Null where there is no limit. */
  readonly origin: LimitOrigin | null;
  readonly picture: VerdictPicture | null;
  readonly unit: string;
  readonly budget: readonly BudgetRow[];
  readonly together: string;
  readonly formula: string;
  readonly evidence: readonly string[];
  readonly stretch: { readonly fromS: number; readonly toS: number; readonly taps: readonly string[] } | null;
  readonly notes: readonly string[];
  readonly settle: string | null;
}

function sentence(finding: Finding, judged: Judged | undefined, limit: string | null): string {
  if (!finding.measured) return finding.reason;
  if (!judged?.limit || !limit) return 'For information: there is no limit to hold it against.';
  if (judged.verdict === 'pass') return `Clear of its limit, ${limit}.`;
  if (judged.verdict === 'fail') return `Beyond its limit, ${limit}.`;
  if (judged.verdict === 'undecided') return `Too close to its limit to call, ${limit}.`;
  return judged.note ?? 'It could not be held against its limit.';
}
/** Of a whole record, in its order. */
export const resultViews = ({ findings, judged }: JudgedRecord): ResultView[] =>
  findings.map((finding) =>
    resultView(
      finding,
      judged.find(({ id }) => id === finding.id),
    ),
  );
export function resultView(finding: Finding, judged: Judged | undefined): ResultView {
  const standing = standingOf(finding, judged);
  const limit = judged?.limit ? limitWords(judged.limit, finding.measured ? finding.value : 1) : null;
  const note = judged?.note ? [tapsNamed(judged.note)] : [];
  const shared = {
    id: finding.id,
    title: finding.title,
    ...standing,
    sentence: sentence(finding, judged, limit),
    limit,
    limitSource: judged?.limit
      ? `${limitRange(judged.limit, finding.measured ? finding.value : 1)}, ${judged.limit.kind}: ${judged.limit.source}`
      : null,
    origin: judged?.limit ? limitOrigin(judged.limit, finding.measured ? finding.value : 1) : null,
    settle: standing.verdict === 'undecided' ? (judged?.note ?? null) : null,
  };
  if (!finding.measured)
    return {
      ...shared,
      ...nothing,
      unit: shownUnit(finding.unit, 1).unit,
      notes: note,
    };
  const notes = finding.notes.map(tapsNamed);
  const shown = shownUnit(finding.unit, finding.value);
  const said = reading(finding.value, finding.interval, finding.unit);
  return {
    ...shared,
    reading: said,
    unit: shown.unit,
    picture: judged?.limit ? verdictPicture(finding.value, finding.interval, judged.limit) : null,
    budget: budgetRows(finding.budget, shown),
    together: said.plusMinus ? `± ${said.plusMinus}` : `${said.low} to ${said.high}`,
    formula: finding.formula,
    evidence: finding.evidence.map(stretchWords),
    stretch: finding.evidence[0] ?? null,
    notes: standing.verdict === 'undecided' ? notes : [...notes, ...note],
  };
}
const stretchWords = ({ fromS, toS, taps }: EvidenceStretch): string =>
  `${fromS.toFixed(1)} to ${toS.toFixed(1)} s: ${taps.map(tapWords).join(', ')}`;
const nothing = {
  reading: null,
  picture: null,
  budget: [],
  together: '',
  formula: '',
  evidence: [],
  stretch: null,
} as const;

export const liveWords = (value: number | null, unit: string) =>
  value === null ? 'not seen' : liveFigure(value, unit);
