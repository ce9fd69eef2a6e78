// SPDX-License-Identifier: MIT
// The logbook to a file and back: everything or some runs as one bench file; a file is previewed first and joins only
// when a person says so. What is here is never replaced.
import { readBenchFile, writeBenchFile, type BenchFileRead } from '#core/record/bench-file';
import { readRecord } from '#core/record/record-reader';
import { arrivingRepairs, type RepairsMerge } from '#core/history/repair';
import { arrivingShelf, forFile, type ShelfMerge } from '#core/parts/shelf-merge';
import type { Bench } from './bench.svelte.ts';
import { catalogueTold } from './catalogue.ts';
import { previewOf, type FilePreview, type NamingOf } from './file-preview.ts';
import type { Logbook } from './logbook.svelte.ts';
import type { Repairs } from './repairs.svelte.ts';
import type { RunSummary } from './run-summary.ts';
import { marmot, type Shelf } from './shelf.svelte.ts';

const wordsOf = (cause: unknown) => (cause instanceof Error ? cause.message : String(cause));
const runsWord = (count: number) => (count === 1 ? '1 run' : `${count} runs`);

interface Pieces {
  readonly bench: Pick<Bench, 'check' | 'checks' | 'wake'>;
  readonly logbook: Logbook;
  readonly shelf: Pick<Shelf, 'content' | 'act'>;
  readonly repairs: Pick<Repairs, 'list' | 'join'>;
}
export interface SavedFile {
  readonly bytes: Uint8Array;
  readonly words: string;
}

export class Exchange {
  #preview = $state.raw<FilePreview | null>(null);
  #cars = $state.raw<ShelfMerge | null>(null);
  #repairs = $state.raw<RepairsMerge | null>(null);
  #trouble = $state<string | null>(null);
  #words = $state('');
  #name = $state('');

  constructor(private readonly pieces: Pieces) {}

  get preview(): FilePreview | null {
    return this.#preview;
  }
  /** Cars and loose parts of the file, against those here; null where it holds none. */
  get cars(): ShelfMerge | null {
    return this.#cars;
  }
  get repairs(): RepairsMerge | null {
    return this.#repairs;
  }
  /** Whether there is anything to add. */
  get brings(): boolean {
    const { added = [], beside = [], notes = [] } = this.#preview ?? {};
    const things = [added, beside, notes, this.#cars?.added ?? [], this.#repairs?.added ?? []];
    return things.some(({ length }) => length > 0);
  }
  get trouble(): string | null {
    return this.#trouble;
  }
  /** What was done last. */
  get words(): string {
    return this.#words;
  }
  /** Of the previewed file. */
  get name(): string {
    return this.#name;
  }
  /** Runs without a record, because they never ended, are told and left out, and so are damaged ones. */
  async save(runs: readonly RunSummary[], madeAt: string): Promise<SavedFile> {
    const texts: string[] = [];
    const notes: Record<string, string> = {};
    for (const { id, note } of runs) {
      const text = await this.pieces.logbook.record(id);
      if (!readable(text)) continue;
      texts.push(text);
      if (note) notes[id] = note;
    }
    const { shelf, repairs } = this.pieces;
    const around = { shelf: forFile(shelf.content), repairs: repairs.list };
    const bytes = writeBenchFile({ ...around, runs: texts, notes }, madeAt);
    const left = runs.length - texts.length;
    const more = left > 0 ? ` ${runsWord(left)} without a whole record could not be put into it.` : '';
    this.#words = `${runsWord(texts.length)} saved.${more}`;
    return { bytes, words: this.#words };
  }
  /** A bench file or the record of one run; what it would bring stands in `preview`. */
  async look(bytes: Uint8Array, name: string): Promise<void> {
    this.leave();
    try {
      const file = readFile(bytes);
      const { logbook, shelf, repairs } = this.pieces;
      await catalogueTold(this.pieces.bench);
      this.#preview = await previewOf(file, logbook, this.#namingOf);
      this.#cars = file.shelf && arrivingShelf(shelf.content, file.shelf, marmot);
      this.#repairs = arrivingRepairs(repairs.list, file.repairs);
      this.#name = name;
    } catch (cause) {
      this.#trouble = `${name}: ${wordsOf(cause)}`;
    }
  }
  /** Writes what the preview tells. A run that can't be kept is told by the logbook and stops nothing. */
  async take(): Promise<void> {
    const { preview, pieces } = { preview: this.#preview, pieces: this.pieces };
    if (!preview) return;
    const arriving = [...preview.added, ...preview.beside];
    for (const { summary, text } of arriving) await pieces.logbook.end(summary, text);
    for (const { id, text } of preview.notes) await pieces.logbook.note(id, text);
    this.#takeShelf();
    this.leave();
    this.#words = `${runsWord(arriving.length)} added.`;
    await pieces.logbook.measure();
  }
  leave(): void {
    [this.#preview, this.#cars, this.#repairs, this.#trouble, this.#words] = [null, null, null, null, ''];
  }
  #takeShelf(): void {
    const { added = [] } = this.#cars ?? {};
    const arriving = this.#cars?.shelf;
    if (arriving && added.length > 0) this.pieces.shelf.act(() => arriving);
    this.pieces.repairs.join(this.#repairs?.added ?? []);
  }
  readonly #namingOf: NamingOf = (checkId) => {
    const check = this.pieces.bench.check(checkId);
    return check && { title: check.title, part: check.part, rig: 'from a file' };
  };
}
function readable(text: unknown): text is string {
  try {
    return typeof text === 'string' && !!readRecord(text);
  } catch {
    return false;
  }
}
const brace = 0x7b;
/** One record as it is saved by itself, or a bench file. */
function readFile(bytes: Uint8Array): BenchFileRead {
  if (bytes[0] !== brace) return readBenchFile(bytes);
  const text = new TextDecoder().decode(bytes);
  return { shelf: null, notes: {}, repairs: [], runs: [text], records: [readRecord(text)], troubles: [] };
}
