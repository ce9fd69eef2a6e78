// SPDX-License-Identifier: MIT
// A stored or opened record, made readable again: its results at once, its columns when the worker has unpacked
// them. Opens files and saves them.
import type { FromBench } from '../worker/messages.ts';
import type { Bench, RunEars } from './bench.svelte.ts';
import type { Logbook } from './logbook.svelte.ts';
import { openRun, readRecordFile, type OpenedRun } from './opened-run.ts';
import { TraceBook } from './trace-book.svelte.ts';

export class Reader implements RunEars {
  #opened = $state.raw<OpenedRun | null>(null);
  #trouble = $state<string | null>(null);
  readonly traces = new TraceBook();

  constructor(
    private readonly bench: Bench,
    private readonly logbook: Logbook,
  ) {
    bench.attend(this);
  }
  get opened(): OpenedRun | null {
    return this.#opened;
  }
  get trouble(): string | null {
    return this.#trouble;
  }
  async open(id: string): Promise<void> {
    const summary = this.logbook.runs.find((run) => run.id === id);
    const record = await this.logbook.record(id);
    if (!summary || !record) return this.#refuse('There is no record of this run in this browser.');
    this.#take(() => openRun(record, summary));
  }
  /** Reads a saved record; it joins the logbook. Resolves with its id, or null with the words in `trouble`. */
  async openFile(text: string): Promise<string | null> {
    try {
      const { opened, record } = readRecordFile(text);
      await this.logbook.end(opened.summary, record);
      this.#take(() => opened);
      return opened.summary.id;
    } catch (cause) {
      this.#refuse(cause instanceof Error ? cause.message : String(cause));
      return null;
    }
  }
  hear(message: FromBench): void {
    if (message.kind !== 'trace' || message.trace.runId !== this.#opened?.summary.id) return;
    this.traces.append(message.trace);
  }
  #take(read: () => OpenedRun): void {
    this.traces.clear();
    this.#trouble = null;
    try {
      this.#opened = read();
      this.bench.tell({ kind: 'show', record: this.#opened.record });
    } catch (cause) {
      this.#refuse(cause instanceof Error ? cause.message : String(cause));
    }
  }
  #refuse(words: string): void {
    this.#opened = null;
    this.#trouble = words;
  }
}
