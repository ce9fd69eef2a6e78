// SPDX-License-Identifier: MIT
// All runs of this browser, newest first. A summary is written when a run starts, so that a run that never
// ended is seen as such; the record follows when it ends. It knows the store only by its four doors.
import type { RunSummary } from './run-summary.ts';
import { migrated, readSummary } from './summary-migration.ts';

/** Where summaries and records are kept; the browser's database in the page, a map in tests. */
export interface Drawer {
  summaries(): Promise<unknown[]>;
  record(id: string): Promise<unknown>;
  put(summary: RunSummary, record?: unknown): Promise<void>;
  remove(id: string): Promise<void>;
}

export class Logbook {
  #runs = $state.raw<readonly RunSummary[]>([]);
  #loaded = $state(false);
  #trouble = $state<string | null>(null);
  /** Run in progress in this page; its unfinished summary is not a crash. */
  #current = $state<string | null>(null);

  constructor(private readonly drawer: Drawer) {}

  get runs(): readonly RunSummary[] {
    return this.#runs;
  }
  get loaded(): boolean {
    return this.#loaded;
  }
  get trouble(): string | null {
    return this.#trouble;
  }
  /** True for a run that began and was never ended, because the page or the computer went away. */
  broken(run: RunSummary): boolean {
    return run.endedAt === undefined && run.id !== this.#current;
  }
  async load(): Promise<void> {
    await this.#keep(async () => {
      const kept = await this.drawer.summaries();
      const read: RunSummary[] = [];
      for (const each of kept) read.push(...(await this.#read(each)));
      const damaged = kept.length - read.length;
      if (damaged > 0)
        this.#trouble = `${damaged} of ${kept.length} runs could not be read and are left out.`;
      this.#runs = read.sort(newestFirst);
    });
    this.#loaded = true;
  }
  async begin(summary: RunSummary): Promise<void> {
    this.#current = summary.id;
    this.#insert(summary);
    await this.#keep(() => this.drawer.put(summary));
  }
  async end(summary: RunSummary, record: unknown): Promise<void> {
    this.#insert(summary);
    await this.#keep(() => this.drawer.put(summary, record));
    if (this.#current === summary.id) this.#current = null;
  }
  async record(id: string): Promise<unknown> {
    return this.drawer.record(id);
  }
  async remove(id: string): Promise<void> {
    this.#runs = this.#runs.filter((run) => run.id !== id);
    await this.#keep(() => this.drawer.remove(id));
  }
  /** None where it is damaged; an older form is brought up to date and kept so. */
  async #read(kept: unknown): Promise<RunSummary[]> {
    const found = readSummary(kept);
    if (found.kind === 'damaged') return [];
    if (found.kind === 'today') return [found.summary];
    const summary = migrated(kept, await this.drawer.record(found.id));
    await this.drawer.put(summary);
    return [summary];
  }
  #insert(summary: RunSummary): void {
    this.#runs = [summary, ...this.#runs.filter((run) => run.id !== summary.id)].sort(newestFirst);
  }
  async #keep(work: () => Promise<void>): Promise<void> {
    try {
      await work();
    } catch (cause) {
      this.#trouble = `This browser could not keep the logbook (${String(cause)}). Save records as files until it can.`;
    }
  }
}
const newestFirst = (a: RunSummary, b: RunSummary) => b.startedAt.localeCompare(a.startedAt);
