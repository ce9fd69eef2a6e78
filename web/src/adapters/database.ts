// SPDX-License-Identifier: MIT
// The browser's database of the bench: its stores and how an older one is brought up to date. Page and worker open
// the same one. It knows names and keys only.
import { openDB, type IDBPDatabase } from 'idb';

/** 1: summaries and records. 2: the journal of runs that go on. 3: cars, parts, repairs and plans as named texts. */
const version = 3;

/** Rejects where the browser refuses it; never throws at once. */
export const openDatabase = async (): Promise<IDBPDatabase> =>
  openDB('bench-marshal', version, {
    upgrade(database, from) {
      if (from < 1) {
        database.createObjectStore('summaries', { keyPath: 'id' });
        database.createObjectStore('records');
      }
      if (from < 2) {
        database.createObjectStore('journal', { keyPath: 'runId' });
        database.createObjectStore('journalParts', { keyPath: ['runId', 'part'] });
      }
      if (from < 3) database.createObjectStore('bench');
    },
    /** Another tab with an older page must not hold up this one. */
    blocking: (_old, _new, event) => (event.target as IDBDatabase).close(),
  });
