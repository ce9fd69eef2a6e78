// SPDX-License-Identifier: MIT
// Named texts in the browser's database beside the runs. It knows names only; what a text says is unchecked.
import { openDatabase } from './database.ts';

export interface BenchStore {
  all(): Promise<ReadonlyMap<string, string>>;
  put(name: string, text: string): Promise<void>;
}
/** A database that neither opens nor refuses, because another tab holds it, counts as refused. */
const patienceMs = 5000;

export function benchStore(): BenchStore {
  const database = openDatabase();
  database.catch(() => {}); // told by whoever asks for something
  const late = new Promise<never>((_, reject) =>
    setTimeout(() => reject(new Error(`no answer in ${patienceMs / 1000} s`)), patienceMs),
  );
  late.catch(() => {});
  return {
    async all() {
      const reading = (await Promise.race([database, late])).transaction('bench');
      const [names, texts] = await Promise.all([reading.store.getAllKeys(), reading.store.getAll()]);
      return new Map(names.map((name, at) => [String(name), String(texts[at])]));
    },
    async put(name, text) {
      await (await database).put('bench', text, name);
    },
  };
}
