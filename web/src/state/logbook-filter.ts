// SPDX-License-Identifier: MIT
// Which runs of the logbook are shown: by part, check, verdict, car, days, words. Pure.
import type { PartKind } from '#core/parts/part';
import type { VerdictWord } from '#core/verdicts/limit';
import type { RunSummary } from './run-summary.ts';
import { worst } from './verdict-words.ts';

/** Empty: all. Days as year-month-day by the computer's calendar, both included. */
export interface LogbookFilter {
  readonly part: PartKind | '';
  readonly check: string;
  readonly verdict: VerdictWord | '';
  readonly car: string;
  readonly from: string;
  readonly to: string;
  /** Each of these words stands in the note, or in the name of check, part or car. */
  readonly words: string;
}
export const noFilter: LogbookFilter = {
  part: '',
  check: '',
  verdict: '',
  car: '',
  from: '',
  to: '',
  words: '',
};
export const filters = (filter: LogbookFilter): boolean => Object.values(filter).some((each) => each !== '');

/** The worst of its judged results; a run without any was not measured. */
export const runVerdict = ({ results }: Pick<RunSummary, 'results'>): VerdictWord =>
  worst(results.filter(({ judged }) => judged))?.verdict ?? 'not measured';

/** "2026-11-01" by the computer's calendar. */
export function dayOf(iso: string): string {
  const at = new Date(iso);
  const two = (number: number) => String(number).padStart(2, '0');
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}
export function filtered(runs: readonly RunSummary[], filter: LogbookFilter): RunSummary[] {
  const words = filter.words.toLowerCase().split(/\s+/).filter(Boolean);
  const is = (wanted: string, found: string) => wanted === '' || wanted === found;
  return runs.filter((run) => {
    const day = dayOf(run.startedAt);
    const text = [run.note, run.checkTitle, run.partName, run.car].join(' ').toLowerCase();
    return (
      is(filter.part, run.part) &&
      is(filter.check, run.checkId) &&
      is(filter.verdict, runVerdict(run)) &&
      is(filter.car, run.car) &&
      (filter.from === '' || day >= filter.from) &&
      (filter.to === '' || day <= filter.to) &&
      words.every((word) => text.includes(word))
    );
  });
}
export interface Choice {
  readonly value: string;
  readonly title: string;
}
/** What can be chosen at all, from the runs that are there. */
export function choices(runs: readonly RunSummary[], of: (run: RunSummary) => Choice): Choice[] {
  const known = new Map(runs.map((run) => [of(run).value, of(run)]));
  return [...known.values()].sort((a, b) => a.title.localeCompare(b.title));
}
