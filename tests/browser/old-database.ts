// SPDX-License-Identifier: MIT
// What earlier versions of the page left in a browser: the database of the first form with two runs, and cars that were
// in the small memory then; and what a page of today has made of it. It is run in the page.
import type { Page } from 'playwright-core';
import { marmotCar } from '#core/parts/marmot-fixture';
import { newShelf } from '#core/parts/shelf';
import { keptRecord, olderSummary } from '../../web/src/state/kept-run-fixture.ts';

/** Its motor is the one of the runs. */
export const oldCar = { ...marmotCar, name: 'Grey Marmot' };
const runs = [
  { id: 'a', day: 1, value: 3, car: oldCar },
  { id: 'b', day: 2, value: 3.2, car: oldCar },
];
/** No journal, summaries without form, no identities. */
export async function leaveFirstForm(page: Page): Promise<void> {
  const kept = runs.map((run) => ({ summary: olderSummary(run), record: keptRecord(run), id: run.id }));
  await page.evaluate(
    async ({ all, shelf }) => {
      const over = (request: IDBRequest | IDBTransaction) =>
        new Promise<void>((done, failed) => {
          Object.assign(request, { onsuccess: done, oncomplete: done, onerror: failed, onblocked: failed });
        });
      await over(indexedDB.deleteDatabase('bench-marshal'));
      const opening = indexedDB.open('bench-marshal', 1);
      opening.onupgradeneeded = () => {
        opening.result.createObjectStore('summaries', { keyPath: 'id' });
        opening.result.createObjectStore('records');
      };
      await over(opening);
      const writing = opening.result.transaction(['summaries', 'records'], 'readwrite');
      for (const { summary, record, id } of all) {
        writing.objectStore('summaries').put(summary);
        writing.objectStore('records').put(record, id);
      }
      await over(writing);
      opening.result.close();
      localStorage.setItem('shelf', shelf);
    },
    { all: kept, shelf: JSON.stringify(newShelf(oldCar)) },
  );
}
export interface Kept {
  readonly version: number;
  readonly stores: readonly string[];
  readonly shelf: string;
  readonly summaries: readonly { readonly partId?: string }[];
}
export const keptNow = (page: Page): Promise<Kept> =>
  page.evaluate(async () => {
    const asked = <T>(request: IDBRequest<T>) =>
      new Promise<T>((done) => (request.onsuccess = () => done(request.result)));
    const database = await asked(indexedDB.open('bench-marshal'));
    const reading = database.transaction(['bench', 'summaries']);
    const [shelf, summaries] = await Promise.all([
      asked(reading.objectStore('bench').get('shelf')),
      asked(reading.objectStore('summaries').getAll()),
    ]);
    database.close();
    const { version, objectStoreNames } = database;
    return { version, stores: [...objectStoreNames], shelf: String(shelf), summaries };
  });
