// SPDX-License-Identifier: MIT
// All runs of this browser, newest first. A summary is written when a run starts, so that a run that never
// ended is seen as such; the record follows when it ends. It knows the store only by its doors.
// Deleted runs stay beside the others until they are deleted for good.
import { identifiedRun, type KnownPart } from '#core/parts/shelf-identity';
import { isVirtual } from './part-runs.ts';
import type { RunSummary } from './run-summary.ts';
import { migrated, readSummary } from './summary-migration.ts';

/** Where summaries and records are kept; the browser's database in the page, a map in tests. */
export interface Drawer {
  summaries(): Promise<unknown[]>;
  record(id: string): Promise<unknown>;
  put(summary: RunSummary, record?: unknown): Promise<void>;
  remove(id: string): Promise<void>;
  /** What the browser's store takes up; missing where it can't tell. */
  room?(): Promise<Room | null>;
  /** Asks the browser never to clear it by itself; resolves with its answer. */
  askToKeep?(): Promise<boolean>;
}
export interface Room {
  readonly usedBytes: number;
  /** The browser clears it only when a person asks for it. */
  readonly kept: boolean;
}

export class Logbook {
  #runs = $state.raw<readonly RunSummary[]>([]);
  #loaded = $state(false);
  #room = $state.raw<Room | null>(null);
  #refusedToKeep = $state(false);
  #here = $derived(this.#runs.filter(({ deletedAt }) => deletedAt === undefined));
  #deleted = $derived(this.#runs.filter(({ deletedAt }) => deletedAt !== undefined));
  #trouble = $state<string | null>(null);
  /** Run in progress in this page; its unfinished summary is not a crash. */
  #current = $state<string | null>(null);

  /** `parts`: what is on the shelf, for runs from before parts had identities. */
  constructor(
    private readonly drawer: Drawer,
    private readonly parts: () => readonly KnownPart[] = () => [],
  ) {}

  get runs(): readonly RunSummary[] {
    return this.#here;
  }
  get deleted(): readonly RunSummary[] {
    return this.#deleted;
  }
  /** Null while it is not known. */
  get room(): Room | null {
    return this.#room;
  }
  /** The browser was asked to keep it and did not say yes. */
  get refusedToKeep(): boolean {
    return this.#refusedToKeep;
  }
  /** Of that name, deleted or not. */
  find(id: string): RunSummary | undefined {
    return this.#runs.find((run) => run.id === id);
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
    await this.identify();
    this.#loaded = true;
  }
  async begin(summary: RunSummary): Promise<void> {
    this.#current = summary.id;
    this.#insert(summary);
    await this.#keep(() => this.drawer.put(summary));
  }
  async end(ended: RunSummary, record: unknown): Promise<void> {
    const { note, deletedAt } = { ...this.find(ended.id), ...ended };
    const whole = { ...ended, ...(note && { note }), ...(deletedAt && { deletedAt }) };
    const summary = identifiedRun(whole, this.parts(), isVirtual(whole));
    this.#insert(summary);
    await this.#keep(() => this.drawer.put(summary, record));
    if (this.#current === summary.id) this.#current = null;
  }
  /** A run of another logbook: it is here only once it is kept. Rejects with what the browser said where it is not. */
  async join(run: RunSummary, record: unknown): Promise<void> {
    const summary = identifiedRun(run, this.parts(), isVirtual(run));
    await this.drawer.put(summary, record);
    this.#insert(summary);
  }
  async record(id: string): Promise<unknown> {
    return this.drawer.record(id);
  }
  /** Empty takes the note out. Written at once. */
  async note(id: string, text: string): Promise<void> {
    await this.#change(id, { note: text.trim() === '' ? undefined : text });
  }
  async delete(id: string, at: string): Promise<void> {
    await this.#change(id, { deletedAt: at });
  }
  async putBack(id: string): Promise<void> {
    await this.#change(id, { deletedAt: undefined });
  }
  /** For good. */
  async remove(id: string): Promise<void> {
    this.#runs = this.#runs.filter((run) => run.id !== id);
    await this.#keep(() => this.drawer.remove(id));
    await this.measure();
  }
  async measure(): Promise<void> {
    this.#room = (await this.drawer.room?.()) ?? null;
  }
  async askToKeep(): Promise<void> {
    this.#refusedToKeep = !(await this.drawer.askToKeep?.());
    await this.measure();
  }
  /** Runs without an identity take that of the part and car that have their names. */
  async identify(): Promise<void> {
    const [before, parts] = [this.#runs, this.parts()];
    const runs = before.map((run) => identifiedRun(run, parts, isVirtual(run)));
    const changed = runs.filter((run, at) => run !== before[at]);
    if (changed.length === 0) return;
    this.#runs = runs;
    for (const run of changed) await this.#keep(() => this.drawer.put(run));
  }
  async #change(id: string, change: Pick<RunSummary, 'note' | 'deletedAt'>): Promise<void> {
    const run = this.find(id);
    if (!run) return;
    const { note, deletedAt, ...rest } = { ...run, ...change };
    const changed = { ...rest, ...(note && { note }), ...(deletedAt && { deletedAt }) };
    this.#insert(changed);
    await this.#keep(() => this.drawer.put(changed));
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
