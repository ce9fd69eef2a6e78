// SPDX-License-Identifier: MIT
// A stored or opened record, made readable again: its results at once, its columns when the worker has unpacked
// them. Opens files; what can't be read is told in words.
import type { FromBench } from '../worker/messages.ts';
import type { Bench, RunEars } from './bench.svelte.ts';
import { catalogueTold } from './catalogue.ts';
import { placeFor, renamed } from './file-preview.ts';
import type { Logbook } from './logbook.svelte.ts';
import { checkOf, openRun, type OpenedRun } from './opened-run.ts';
import { TraceBook } from './trace-book.svelte.ts';

const wordsOf = (cause: unknown) => (cause instanceof Error ? cause.message : String(cause));

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
    const text = await this.logbook.record(id);
    if (!summary || typeof text !== 'string')
      return this.#refuse('There is no record of this run in this browser.');
    this.#take(() => openRun(text, { title: summary.checkTitle, part: summary.part, rig: summary.rig }));
  }
  /** Reads a saved record; it joins the logbook, beside a run of its name that differs. Resolves with its id, or null with the words in `trouble`. */
  async openFile(text: string): Promise<string | null> {
    try {
      const id = checkOf(text);
      await catalogueTold(this.bench);
      const check = this.bench.check(id);
      if (!check) throw new Error(`The record is of the check "${id}", which this version does not have.`);
      const naming = { title: check.title, part: check.part, rig: 'from a file' };
      const arriving = { text, summary: openRun(text, naming).summary };
      const [place, known] = await placeFor(arriving, this.logbook);
      const kept = place === arriving.summary.id ? arriving : renamed(arriving, place);
      if (!known) await this.logbook.end(kept.summary, kept.text);
      this.#take(() => openRun(kept.text, naming));
      return place;
    } catch (cause) {
      this.#refuse(wordsOf(cause));
      return null;
    }
  }
  hear(message: FromBench): void {
    if (message.kind !== 'trace' || message.trace.runId !== this.#opened?.summary.id) return;
    this.traces.append(message.trace, message.fresh);
  }
  #take(read: () => OpenedRun): void {
    this.traces.clear();
    this.#trouble = null;
    try {
      const opened = read();
      this.#opened = opened;
      this.bench.tell({ kind: 'show', runId: opened.summary.id, text: opened.text });
    } catch (cause) {
      this.#refuse(wordsOf(cause));
    }
  }
  #refuse(words: string): void {
    this.#opened = null;
    this.#trouble = words;
  }
}
