// SPDX-License-Identifier: MIT
// For tests: a logbook with its shelf and repairs as the page has them, in memory.
import { Exchange } from './exchange.svelte.ts';
import { keptRecord, keptSummary, type KeptRun } from './kept-run-fixture.ts';
import { Logbook } from './logbook.svelte.ts';
import { Repairs } from './repairs.svelte.ts';
import type { RunSummary } from './run-summary.ts';
import { Shelf } from './shelf.svelte.ts';

const checks = [{ id: 'motor-no-load', title: 'No-load current', part: 'motor' }];
const bench = {
  checks,
  check: (id: string) => checks.find((check) => check.id === id),
  wake: () => {},
} as never;

export function memory(first: Readonly<Record<string, unknown>> = {}) {
  const kept = new Map(Object.entries(first).map(([key, value]) => [key, JSON.stringify(value)]));
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
  };
}
export interface ExchangePage {
  /** In the small memory at first: `car`, `repairs`. */
  readonly first?: Readonly<Record<string, unknown>>;
  /** Whether the browser takes another run in. */
  readonly room?: (summary: RunSummary) => boolean;
}
export async function exchangePage(
  runs: readonly KeptRun[],
  { first, room = () => true }: ExchangePage = {},
) {
  const summaries = new Map<string, RunSummary>();
  const records = new Map<string, unknown>();
  for (const run of runs) {
    const summary = keptSummary(run);
    summaries.set(summary.id, summary);
    records.set(summary.id, keptRecord(run));
  }
  const drawer = {
    summaries: () => Promise.resolve([...summaries.values()]),
    record: (id: string) => Promise.resolve(records.get(id)),
    put: (summary: RunSummary, record?: unknown) => {
      if (!room(summary)) return Promise.reject(new DOMException('no room', 'QuotaExceededError'));
      summaries.set(summary.id, summary);
      if (record !== undefined) records.set(summary.id, record);
      return Promise.resolve();
    },
    remove: (id: string) => Promise.resolve(void (summaries.delete(id) && records.delete(id))),
  };
  const shelf = new Shelf(memory(first));
  const parts = () => shelf.known;
  const [logbook, repairs] = [new Logbook(drawer, parts), new Repairs(memory(first), parts)];
  await logbook.load();
  const exchange = new Exchange({ bench, logbook, shelf, repairs });
  return { logbook, shelf, repairs, summaries, records, exchange };
}
