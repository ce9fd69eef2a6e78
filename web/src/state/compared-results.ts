// SPDX-License-Identifier: MIT
// Results of runs of one check side by side, and each run's difference from the first with what it is worth: more than
// uncertainty and scatter, or not. Pure.
import { differenceOf, runsForScatter, type Difference } from '#core/history/difference';
import type { HistoryPoint } from '#core/history/part-history';
import { isOfPart } from '#core/parts/identity';
import { tapsNamed } from '#core/samples/tap-titles';
import { letters } from './comparison.svelte.ts';
import { decimalsFor, figure, reading, shownUnit } from './figures.ts';
import { findingOf } from './part-runs.ts';
import { resultDetail, type RunSummary } from './run-summary.ts';

export interface ComparedLine {
  readonly title: string;
  readonly values: readonly string[];
  /** From B on. */
  readonly differences: readonly { readonly name: string; readonly figure: string; readonly words: string }[];
}
function pointOf(run: RunSummary, resultId: string): HistoryPoint | null {
  const line = run.results.find(({ id }) => id === resultId);
  const finding = line && findingOf(line);
  if (!finding?.measured) return null;
  const { id: runId, partName, partId, startedAt: at, rigSerial = '' } = run;
  return { runId, partName, partId, at, rigSerial, finding };
}
/** Values of the result in all runs of this check on this part and rig, in order of time. */
function historyOf(all: readonly RunSummary[], like: HistoryPoint, checkId: string): number[] {
  return all
    .filter((run) => run.checkId === checkId && isOfPart(run, like))
    .flatMap((run) => pointOf(run, like.finding.id) ?? [])
    .filter(
      ({ finding, rigSerial }) =>
        finding.condition === like.finding.condition && rigSerial === like.rigSerial,
    )
    .toSorted((a, b) => a.at.localeCompare(b.at))
    .map(({ finding }) => finding.value);
}
const scatterWords: Readonly<Record<Difference['scatter'], string>> = {
  unknown: `How much it scatters from run to run is not known yet: that takes ${runsForScatter} runs of this part.`,
  'within budgets': 'Runs of this part scatter no more than their uncertainty says.',
  counts: 'Runs of this part scatter by more than their uncertainty says: the scatter is counted.',
};
function differenceWords(found: Difference, name: string): string {
  const { clear, scatter, shared } = found;
  const said = clear
    ? `${name} is larger than uncertainty${scatter === 'unknown' ? '' : ' and scatter'}: it is a real difference.`
    : `${name} is within uncertainty${scatter === 'unknown' ? '' : ' and scatter'}: no difference is seen.`;
  const out =
    shared.length > 0 ? ` Both have in common, so it falls out: ${shared.map(tapsNamed).join(', ')}.` : '';
  return `${said} ${scatterWords[scatter]}${out}`;
}
function differenceFigure({ by, half }: Difference, unit: string, size: number): string {
  const shown = shownUnit(unit, size);
  const decimals = decimalsFor(shown.difference(half));
  const [value, plusMinus] = [by, half].map((own) => figure(shown.difference(own), decimals));
  return `${by > 0 ? '+' : ''}${value}\u00a0±\u00a0${plusMinus}\u00a0${shown.unit}`;
}
function compared(
  first: HistoryPoint | null,
  other: HistoryPoint | null,
  name: string,
  history: readonly number[],
) {
  if (!first || !other) return { name, figure: 'none', words: `${name}: one of the two was not measured.` };
  if (first.finding.condition !== other.finding.condition)
    return {
      name,
      figure: 'none',
      words: `${name}: they hold at different conditions, ${first.finding.condition ?? 'none told'} and ${other.finding.condition ?? 'none told'}.`,
    };
  const found = differenceOf(other, first, history);
  const { unit, value } = first.finding;
  return { name, figure: differenceFigure(found, unit, value), words: differenceWords(found, name) };
}
function valueWords(run: RunSummary, resultId: string): string {
  const line = run.results.find(({ id }) => id === resultId);
  if (!line) return 'not in this run';
  if (line.value === undefined || !line.interval) return resultDetail(line);
  const said = reading(line.value, line.interval, line.unit);
  return `${said.value}\u00a0${said.unit}`;
}
/** `runs`: the picked ones of one check, A first. */
export function comparedResults(runs: readonly RunSummary[], all: readonly RunSummary[]): ComparedLine[] {
  const titles = new Map(runs.flatMap(({ results }) => results.map(({ id, title }) => [id, title] as const)));
  return [...titles].map(([id, title]) => {
    const [first, ...others] = runs.map((run) => pointOf(run, id));
    const history = first ? historyOf(all, first, runs[0].checkId) : [];
    const values = runs.map((run) => valueWords(run, id));
    const differences = others.map((other, i) =>
      compared(first, other, `${letters[i + 1]} \u2212 A`, history),
    );
    return { title, values, differences };
  });
}
