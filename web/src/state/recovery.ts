// SPDX-License-Identifier: MIT
// Runs that were cut off with the page: what the worker's journal holds of them joins the logbook as a record. A run
// of which nothing was written stays in the list as one that never ended.
import type { FromBench } from '../worker/messages.ts';
import type { Bench, RunEars } from './bench.svelte.ts';
import type { Logbook } from './logbook.svelte.ts';
import { openRun } from './opened-run.ts';
import type { RunSummary } from './run-summary.ts';

export class Recovery implements RunEars {
  private readonly wanted = new Map<string, RunSummary>();

  constructor(
    private readonly bench: Bench,
    private readonly logbook: Logbook,
  ) {
    bench.attend(this);
  }
  /** Asks for every run that never ended; call it when the logbook is loaded. */
  begin(): void {
    for (const run of this.logbook.runs.filter((each) => this.logbook.broken(each))) {
      this.wanted.set(run.id, run);
      this.bench.tell({ kind: 'recover', runId: run.id });
    }
  }
  hear(message: FromBench): void {
    if (message.kind !== 'recovered' || message.text === null) return;
    const run = this.wanted.get(message.runId);
    if (run) void this.keep(run, message.text);
  }
  private async keep({ id, checkTitle, part, rig }: RunSummary, text: string): Promise<void> {
    this.wanted.delete(id);
    const { summary } = openRun(text, { title: checkTitle, part, rig });
    await this.logbook.end(summary, text);
    this.bench.tell({ kind: 'kept', runId: id });
  }
}
