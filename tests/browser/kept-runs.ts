// SPDX-License-Identifier: MIT
// Runs put into the page's database as it keeps them, so that a screen can be looked at without a run.
import type { Page } from 'playwright-core';
import type { Car } from '#core/parts/part';
import { carOnBench as onBench, shelfSchema } from '#core/parts/shelf';
import { keptRecord, keptSummary, type KeptRun } from '../../web/src/state/kept-run-fixture.ts';

/** With their whole records; the page reads them when it is loaded next. */
export async function keepRuns(page: Page, runs: readonly KeptRun[]): Promise<void> {
  const kept = runs.map((run) => ({ summary: keptSummary(run), record: keptRecord(run) }));
  await page.evaluate(async (rows) => {
    const opening = indexedDB.open('bench-marshal');
    await new Promise((done) => (opening.onsuccess = done));
    const writing = opening.result.transaction(['summaries', 'records'], 'readwrite');
    for (const { summary, record } of rows) {
      writing.objectStore('summaries').put(summary);
      writing.objectStore('records').put(record, summary.id);
    }
    await new Promise((done) => (writing.oncomplete = done));
    opening.result.close();
  }, kept);
}
/** Of the page's shelf. */
export async function carOnBench(page: Page): Promise<Car> {
  const text = await page.evaluate(async () => {
    const opening = indexedDB.open('bench-marshal');
    await new Promise((done) => (opening.onsuccess = done));
    const reading = opening.result.transaction('bench').objectStore('bench').get('shelf');
    await new Promise((done) => (reading.onsuccess = done));
    opening.result.close();
    return String(reading.result);
  });
  return onBench(shelfSchema.parse(JSON.parse(text)));
}
