// SPDX-License-Identifier: MIT
// Runs picked to be held against each other: two to four of one check, A first; their records are read when two are
// picked. It draws nothing.
import { tapTitle } from '#core/samples/tap-titles';
import { recordedTaps } from './chart-words.ts';
import { comparedRun, type ComparedRun } from './compared-run.ts';
import type { Logbook } from './logbook.svelte.ts';
import type { RunSummary } from './run-summary.ts';

export const letters = ['A', 'B', 'C', 'D'] as const;
export type Letter = (typeof letters)[number];

export class Comparison {
  #ids = $state.raw<readonly string[]>([]);
  #read = $state.raw<ReadonlyMap<string, ComparedRun>>(new Map());
  #words = $state('');
  #tap = $state<string | null>(null);

  constructor(private readonly logbook: Logbook) {}

  get runs(): readonly RunSummary[] {
    return this.#ids.flatMap((id) => this.logbook.runs.find((run) => run.id === id) ?? []);
  }
  letter(id: string): Letter | null {
    const at = this.runs.findIndex((run) => run.id === id);
    return at < 0 ? null : letters[at];
  }
  /** What the last pick did, where that needs words. */
  get words(): string {
    return this.#words;
  }
  /** Records read so far, A first. */
  get records(): readonly ComparedRun[] {
    return this.runs.flatMap(({ id }) => this.#read.get(id) ?? []);
  }
  get taps(): readonly { readonly tap: string; readonly title: string }[] {
    const taps = this.records.flatMap(({ traces }) => recordedTaps(traces).map(({ tap }) => tap));
    return [...new Set(taps)].map((tap) => ({ tap, title: tapTitle(tap) }));
  }
  get tap(): string | null {
    const known = (tap: string | null | undefined) => this.taps.some((each) => each.tap === tap);
    if (known(this.#tap)) return this.#tap;
    const telling = this.records[0]?.telling;
    return known(telling) ? (telling ?? null) : (this.taps[0]?.tap ?? null);
  }
  set tap(tap: string | null) {
    this.#tap = tap;
  }
  clear(): void {
    this.#ids = [];
    this.#words = '';
  }
  /** Picks or leaves a run. One of another check begins a new comparison; a fifth is refused in words. */
  async pick(run: RunSummary): Promise<void> {
    this.#words = '';
    const [first] = this.runs;
    if (this.letter(run.id)) this.#ids = this.#ids.filter((id) => id !== run.id);
    else if (first && first.checkId !== run.checkId) this.#begin(run, first);
    else if (this.runs.length === letters.length)
      this.#words = `${letters.length} runs at most can be compared: leave one out first.`;
    else this.#ids = [...this.runs.map(({ id }) => id), run.id];
    if (this.runs.length > 1) await this.#readAll();
  }
  #begin(run: RunSummary, before: RunSummary): void {
    this.#ids = [run.id];
    this.#words = `Only runs of one check can be compared: begun anew with "${run.checkTitle}" instead of "${before.checkTitle}".`;
  }
  async #readAll(): Promise<void> {
    for (const { id } of this.runs.filter((run) => !this.#read.has(run.id))) {
      const text = await this.logbook.record(id);
      const letter = this.letter(id);
      try {
        if (typeof text !== 'string') throw new Error('this browser holds no samples of it');
        this.#read = new Map([...this.#read, [id, comparedRun(text)]]);
      } catch (cause) {
        this.#words = `Run ${letter} is not drawn: ${(cause as Error).message}.`;
      }
    }
  }
}
