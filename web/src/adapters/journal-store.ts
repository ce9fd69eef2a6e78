// SPDX-License-Identifier: MIT
// The journal's place in the browser: one head a run and its parts in order. What comes back is unchecked.
import { openDatabase } from './database.ts';

/** Parts are numbered from 0. */
export interface JournalStore {
  begin(head: { readonly runId: string }): Promise<void>;
  append(runId: string, part: number, columns: unknown): Promise<void>;
  read(runId: string): Promise<{ head: unknown; parts: unknown[] }>;
  remove(runId: string): Promise<void>;
}
const partsOf = (runId: string) => IDBKeyRange.bound([runId, 0], [runId, Number.MAX_SAFE_INTEGER]);

export function journalStore(): JournalStore {
  const database = openDatabase();
  database.catch(() => {}); // told by whoever asks for something
  return {
    async begin(head) {
      await (await database).put('journal', head);
    },
    async append(runId, part, columns) {
      await (await database).put('journalParts', { runId, part, columns });
    },
    async read(runId) {
      const head: unknown = await (await database).get('journal', runId);
      const parts = (await (await database).getAll('journalParts', partsOf(runId))) as { columns: unknown }[];
      return { head, parts: parts.map(({ columns }) => columns) };
    },
    async remove(runId) {
      const writing = (await database).transaction(['journal', 'journalParts'], 'readwrite');
      await writing.objectStore('journal').delete(runId);
      await writing.objectStore('journalParts').delete(partsOf(runId));
      await writing.done;
    },
  };
}
