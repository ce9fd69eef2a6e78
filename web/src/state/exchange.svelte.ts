// SPDX-License-Identifier: MIT
// The logbook to a file and back: everything or some runs as one bench file; a file is previewed first and joins only
// when a person says so. A part or car of the file that only shares a name with one here is asked about.
import { usualAnswer, type Alike, type AlikeAnswer } from '#core/parts/alike-parts';
import { usualChoice, type CarChoice, type DifferingCar, type ShelfMerge } from '#core/parts/shelf-merge';
import type { NewId } from '#core/parts/shelf-identity';
import type { RepairsMerge } from '#core/history/repair';
import type { BenchFileRead } from '#core/record/bench-file';
import { packedRuns, readFile } from './bench-file-runs.ts';
import type { Bench } from './bench.svelte.ts';
import { catalogueTold } from './catalogue.ts';
import { alikesOf, outcomeOf, type Answers, type FileOutcome, type Ours } from './file-outcome.ts';
import { previewOf, type FilePreview, type NamingOf } from './file-preview.ts';
import type { Logbook } from './logbook.svelte.ts';
import type { Repairs } from './repairs.svelte.ts';
import type { RunSummary } from './run-summary.ts';
import { marmot, type Shelf } from './shelf.svelte.ts';

const wordsOf = (cause: unknown) => (cause instanceof Error ? cause.message : String(cause));
const runsWord = (count: number) => (count === 1 ? '1 run' : `${count} runs`);
const none: Answers = { parts: {}, cars: {} };

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
  #file = $state.raw<BenchFileRead | null>(null);
  #preview = $state.raw<FilePreview | null>(null);
  #alikes = $state.raw<readonly Alike[]>([]);
  #answers = $state.raw<Answers>(none);
  #trouble = $state<string | null>(null);
  #words = $state('');
  #name = $state('');
  #outcome = $derived.by(() => this.#worked());

  constructor(
    private readonly pieces: Pieces,
    private readonly newId: NewId = () => crypto.randomUUID(),
  ) {}

  get preview(): FilePreview | null {
    return this.#preview;
  }
  /** Cars and loose parts of the file, against those here; null where it holds none. */
  get cars(): ShelfMerge | null {
    return this.#outcome?.cars ?? null;
  }
  get repairs(): RepairsMerge | null {
    return this.#outcome?.repairs ?? null;
  }
  /** Parts of the file that are called as one here. */
  get alikes(): readonly Alike[] {
    return this.#alikes;
  }
  answer({ key }: Alike): AlikeAnswer | null {
    return this.#answers.parts[key] ?? null;
  }
  say(alikes: readonly Alike[], answer: AlikeAnswer): void {
    const said = Object.fromEntries(alikes.map(({ key }) => [key, answer]));
    this.#answers = { ...this.#answers, parts: { ...this.#answers.parts, ...said } };
  }
  choice(car: DifferingCar): CarChoice {
    return this.#answers.cars[car.theirs.name] ?? usualChoice(car);
  }
  choose({ theirs }: DifferingCar, choice: CarChoice): void {
    this.#answers = { ...this.#answers, cars: { ...this.#answers.cars, [theirs.name]: choice } };
  }
  /** Parts of which nobody has said yet whether they are the same. */
  get unsaid(): number {
    return this.#alikes.filter((alike) => this.answer(alike) === null).length;
  }
  /** Whether a person has anything to decide. */
  get asks(): boolean {
    return this.#alikes.length + (this.cars?.differing.length ?? 0) > 0;
  }
  /** Whether there is anything to add. */
  get brings(): boolean {
    const { added = [], beside = [], notes = [] } = this.#preview ?? {};
    const things = [added, beside, notes, this.cars?.added ?? [], this.repairs?.added ?? []];
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
    const { bytes, packed } = await packedRuns(this.pieces, runs, madeAt);
    const left = runs.length - packed;
    const more = left > 0 ? ` ${runsWord(left)} without a whole record could not be put into it.` : '';
    this.#words = `${runsWord(packed)} saved.${more}`;
    return { bytes, words: this.#words };
  }
  /** A bench file or the record of one run; what it would bring stands in `preview`. */
  async look(bytes: Uint8Array, name: string): Promise<void> {
    this.leave();
    try {
      const file = readFile(bytes);
      await catalogueTold(this.pieces.bench);
      const preview = await previewOf(file, this.pieces.logbook, this.#namingOf);
      this.#alikes = alikesOf(file, preview, this.#ours);
      const parts = this.#alikes.map((alike) => [alike.key, usualAnswer(alike, preview.known)]);
      this.#answers = { cars: {}, parts: Object.fromEntries(parts) };
      [this.#file, this.#preview, this.#name] = [file, preview, name];
    } catch (cause) {
      this.#trouble = `${name}: ${wordsOf(cause)}`;
    }
  }
  /** Writes what the preview tells and says what was kept. A run that can't be kept stops nothing. */
  async take(): Promise<void> {
    const [preview, outcome] = [this.#preview, this.#outcome];
    if (!preview || !outcome || this.unsaid > 0) return;
    const { shelf, repairs, logbook } = this.pieces;
    const { cars } = outcome;
    if (cars && cars.added.length > 0) shelf.act(() => cars.shelf);
    repairs.join(outcome.repairs.added);
    const arriving = [...preview.added, ...preview.beside];
    const whys: string[] = [];
    for (const { summary, text } of arriving)
      await logbook.join(outcome.joining(summary), text).catch((cause: unknown) => whys.push(wordsOf(cause)));
    for (const { id, text } of preview.notes) await logbook.note(id, text);
    this.leave();
    this.#words = `${runsWord(arriving.length - whys.length)} added.${unkept(whys)}`;
    await logbook.measure();
  }
  leave(): void {
    [this.#file, this.#preview, this.#alikes, this.#answers] = [null, null, [], none];
    [this.#trouble, this.#words] = [null, ''];
  }
  #worked(): FileOutcome | null {
    return this.#file && outcomeOf(this.#file, this.#alikes, this.#answers, this.#ours, this.newId);
  }
  get #ours(): Ours {
    const { shelf, repairs, logbook } = this.pieces;
    return { shelf: shelf.content, repairs: repairs.list, runs: logbook.runs, example: marmot };
  }
  readonly #namingOf: NamingOf = (checkId) => {
    const check = this.pieces.bench.check(checkId);
    return check && { title: check.title, part: check.part, rig: 'from a file' };
  };
}
const unkept = (whys: readonly string[]): string =>
  whys.length === 0
    ? ''
    : ` ${runsWord(whys.length)} could not be kept: this browser has no room for them or refuses them (${whys[0]}). Delete runs for good to make room, then open the file again: what is here by then is not added twice.`;
