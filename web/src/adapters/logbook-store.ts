// SPDX-License-Identifier: MIT
// The logbook's place in the browser: IndexedDB, two stores, so that a list never loads whole records. It knows
// keys, not what a run is; what comes back is unchecked.
import { openDatabase } from './database.ts';

export interface Kept {
  readonly id: string;
}
export interface LogbookStore {
  summaries(): Promise<unknown[]>;
  record(id: string): Promise<unknown>;
  /** Writes the summary and, when given, the record in one transaction. */
  put(summary: Kept, record?: unknown): Promise<void>;
  remove(id: string): Promise<void>;
  /** Null where the browser can't tell. */
  room(): Promise<{ usedBytes: number; kept: boolean } | null>;
  askToKeep(): Promise<boolean>;
}

export function logbookStore(): LogbookStore {
  const database = openDatabase();
  database.catch(() => {}); // told by whoever asks for something
  return {
    summaries: async () => (await database).getAll('summaries'),
    record: async (id) => (await database).get('records', id),
    async put(summary, record) {
      const writing = (await database).transaction(['summaries', 'records'], 'readwrite');
      await writing.objectStore('summaries').put(summary);
      if (record !== undefined) await writing.objectStore('records').put(record, summary.id);
      await writing.done;
    },
    async remove(id) {
      const writing = (await database).transaction(['summaries', 'records'], 'readwrite');
      await writing.objectStore('summaries').delete(id);
      await writing.objectStore('records').delete(id);
      await writing.done;
    },
    async room() {
      const storage = navigator.storage as StorageManager | undefined;
      const { usage } = (await storage?.estimate()) ?? {};
      return usage === undefined ? null : { usedBytes: usage, kept: (await storage?.persisted()) ?? false };
    },
    askToKeep: async () => (await (navigator.storage as StorageManager | undefined)?.persist()) ?? false,
  };
}
