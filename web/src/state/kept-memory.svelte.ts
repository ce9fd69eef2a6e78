// SPDX-License-Identifier: MIT
// Cars, parts, repairs and plans in the browser's database: all read once, every change written at once. What the small
// memory held before moves over and stays there as it was. Where the database is refused the small memory goes on being
// the place, and the page says so.
import type { BenchStore } from '../adapters/bench-store.ts';

export interface OldPlace {
  getItem(name: string): string | null;
  setItem(name: string, text: string): void;
}
const movedName = (name: string) => `${name} as it moved`;
const refusedWords = (cause: unknown) =>
  `This browser refuses its database (${String(cause)}): runs are not kept, cars and parts only in its small memory. Allow this site to keep data and close its other tabs, then load the page again. Until then save each run as a file.`;
const unkeptWords = (cause: unknown) =>
  `This browser could not keep the last change to cars, parts or plans (${String(cause)}): it stands on this page only. Delete runs for good in the logbook to make room, then try again; else save the logbook as a file before you close the page.`;

/** Reads what is kept. Never rejects. */
export async function openMemory(store: BenchStore, old: OldPlace): Promise<KeptMemory> {
  try {
    return new KeptMemory(store, new Map(await store.all()), old);
  } catch (cause) {
    return new KeptMemory(null, new Map(), old, refusedWords(cause));
  }
}
export class KeptMemory {
  #trouble = $state<string | null>(null);
  /** Written here, not there yet. */
  #unkept = new Map<string, string>();
  #waiting = $state(0);

  /** `store`: null where the database is refused. */
  constructor(
    private readonly store: BenchStore | null,
    private readonly texts: Map<string, string>,
    private readonly old: OldPlace,
    refused: string | null = null,
  ) {
    this.#trouble = refused;
  }
  /** What is not kept, why, and what to do. */
  get trouble(): string | null {
    return this.#trouble;
  }
  /** Whether trying again may help. */
  get waiting(): boolean {
    return this.#waiting > 0;
  }
  getItem(name: string): string | null {
    const text = this.store && this.texts.get(name);
    return text ?? this.#move(name);
  }
  setItem(name: string, text: string): void {
    if (!this.store) return this.#keepOld(name, text);
    this.texts.set(name, text);
    void this.#write(this.store, name, text);
  }
  /** What was written to the old place since it moved, by an older page or while the database was refused; told once. */
  writtenSince(name: string): string | null {
    const before = this.old.getItem(name);
    if (!this.store || before === null || before === this.texts.get(movedName(name))) return null;
    this.setItem(movedName(name), before);
    return before;
  }
  async retry(): Promise<void> {
    const { store } = this;
    if (store) for (const [name, text] of this.#unkept) await this.#write(store, name, text);
  }
  #move(name: string): string | null {
    const before = this.old.getItem(name);
    if (this.store && before !== null) {
      this.setItem(movedName(name), before);
      this.setItem(name, before);
    }
    return before;
  }
  #keepOld(name: string, text: string): void {
    try {
      this.old.setItem(name, text);
    } catch (cause) {
      this.#trouble = unkeptWords(cause);
    }
  }
  async #write(store: BenchStore, name: string, text: string): Promise<void> {
    this.#unkept.set(name, text);
    try {
      await store.put(name, text);
      if (this.#unkept.get(name) === text) this.#unkept.delete(name);
      if (this.#unkept.size === 0) this.#trouble = null;
    } catch (cause) {
      this.#trouble = unkeptWords(cause);
    }
    this.#waiting = this.#trouble === null ? 0 : this.#unkept.size;
  }
}
