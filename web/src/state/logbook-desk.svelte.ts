// SPDX-License-Identifier: MIT
// What a person has chosen in the logbook, kept while the page is open: the filter, the runs to compare, the file on
// its way in. It keeps nothing beyond that.
import { Comparison } from './comparison.svelte.ts';
import { Exchange } from './exchange.svelte.ts';
import { filtered, noFilter, type LogbookFilter } from './logbook-filter.ts';
import type { Page } from './page.ts';
import type { RunSummary } from './run-summary.ts';

export class LogbookDesk {
  filter = $state.raw<LogbookFilter>(noFilter);
  readonly comparison: Comparison;
  readonly exchange: Exchange;

  constructor(private readonly page: Pick<Page, 'bench' | 'logbook' | 'shelf' | 'repairs'>) {
    this.comparison = new Comparison(page.logbook);
    this.exchange = new Exchange(page);
  }
  get shown(): readonly RunSummary[] {
    return filtered(this.page.logbook.runs, this.filter);
  }
}
const desks = new WeakMap<object, LogbookDesk>();
/** The page's one. */
export function deskOf(page: Page): LogbookDesk {
  const desk = desks.get(page.logbook) ?? new LogbookDesk(page);
  desks.set(page.logbook, desk);
  return desk;
}
