// SPDX-License-Identifier: MIT
// One run from picking a check to its verdict: which station is reached, what is ticked, what the bench says,
// what came out. It judges nothing; the worker runs the check and hands back its record.
import type { RunEnd } from '#checks/plans/outcomes';
import { wiringWords } from '#checks/wiring';
import type { Meter } from '#core/calibration/meter';
import { partRefOf } from '#core/parts/part';
import { askedNumber, type NumberWanted } from '#core/units/asked-number';
import type { CheckCard, FromBench } from '../worker/messages.ts';
import type { Bench, RunEars } from './bench.svelte.ts';
import type { Logbook } from './logbook.svelte.ts';
import { openRun, type OpenedRun } from './opened-run.ts';
import { virtualRig } from './part-runs.ts';
import { summaryForm, type RunSummary } from './run-summary.ts';
import type { Shelf } from './shelf.svelte.ts';
import { TraceBook } from './trace-book.svelte.ts';

export const stations = ['connect', 'cautions', 'hold', 'run', 'verdict'] as const;
export type Station = (typeof stations)[number];
export interface Ask {
  readonly askId: number;
  readonly words: string;
  /** A figure that the person reads or sets. */
  readonly wanted?: NumberWanted;
}
export interface Doing {
  readonly step: number;
  readonly of: number;
  readonly words: string;
  readonly leftS: number;
}
export interface RunTools {
  readonly bench: Bench;
  readonly logbook: Logbook;
  readonly shelf: Shelf;
  readonly now: () => number;
  readonly newId: () => string;
  /** The virtual person at the bench does what was asked, and gives the figure that it read, if any. */
  readonly person: (act: string) => Promise<number | undefined>;
  /** The hand-held meter a person told of, for what a calibration would bring. */
  readonly meter?: () => Meter | undefined;
  /** Told of every run that ended, however it did. */
  readonly ended?: (run: EndedRun) => void;
}
export interface EndedRun {
  readonly runId: string;
  readonly check: string;
  readonly car: string;
  readonly end: RunEnd;
  /** Hands and figures it asked for. */
  readonly asked: number;
}

export class Run implements RunEars {
  #check = $state.raw<CheckCard | null>(null);
  #ticked = $state<boolean[]>([]);
  #running = $state(false);
  #doing = $state.raw<Doing | null>(null);
  #ask = $state.raw<Ask | null>(null);
  #askTrouble = $state<string | null>(null);
  #opened = $state.raw<OpenedRun | null>(null);
  #trouble = $state<string | null>(null);
  #runId: string | null = null;
  #asked = 0;
  #summary: RunSummary | null = null;
  readonly traces = new TraceBook();

  constructor(private readonly tools: RunTools) {
    tools.bench.attend(this);
  }
  get check(): CheckCard | null {
    return this.#check;
  }
  get ticked(): readonly boolean[] {
    return this.#ticked;
  }
  get running(): boolean {
    return this.#running;
  }
  get doing(): Doing | null {
    return this.#doing;
  }
  get ask(): Ask | null {
    return this.#ask;
  }
  /** What is wrong with the figure that was typed. */
  get askTrouble(): string | null {
    return this.#askTrouble;
  }
  get opened(): OpenedRun | null {
    return this.#opened;
  }
  get trouble(): string | null {
    return this.#trouble;
  }
  get station(): Station {
    if (this.#opened) return 'verdict';
    if (this.#running) return 'run';
    if (this.unseen.length > 0) return 'connect';
    return this.#ticked.every(Boolean) ? 'hold' : 'cautions';
  }
  /** Wiring steps whose tap the rig has not seen yet. */
  get unseen(): readonly string[] {
    const steps = this.#check?.wiring ?? [];
    return steps.filter((step) => step.tap && !this.seen(step.tap)).map((step) => step.words);
  }
  seen(tap: string): boolean {
    const live = this.tools.bench.live(tap);
    return live !== null && live.fresh && live.value !== null;
  }
  /** What is missing before going live, as one sentence; null when nothing is. */
  get missing(): string | null {
    if (!this.tools.bench.connected) return 'No rig is connected.';
    if (this.tools.bench.phase === 'tripped') return 'The rig has tripped: clear it first.';
    if (this.unseen.length > 0)
      return `Not seen yet: ${this.unseen.length} of ${this.#check?.wiring.length ?? 0} connections.`;
    const open = this.#ticked.filter((each) => !each).length;
    return open > 0 ? `${open} of ${this.#ticked.length} cautions not ticked.` : null;
  }
  /** Opens the stations of a check, with every caution to be ticked anew. */
  prepare(check: CheckCard): void {
    if (this.#running) return;
    this.#check = check;
    this.#ticked = check.cautions.map(() => false);
    this.#opened = null;
    this.#doing = null;
    this.#ask = null;
    this.#trouble = null;
    this.traces.clear();
  }
  tick(index: number, on: boolean): void {
    this.#ticked[index] = on;
  }
  async goLive(): Promise<void> {
    const check = this.#check;
    if (!check || this.missing || this.#running) return;
    const car = this.tools.shelf.car;
    const startedAt = new Date(this.tools.now()).toISOString();
    this.#runId = this.tools.newId();
    this.#running = true;
    this.#asked = 0;
    this.#trouble = null;
    this.traces.clear();
    this.#summary = {
      form: summaryForm,
      id: this.#runId,
      startedAt,
      checkId: check.id,
      checkTitle: check.title,
      part: check.part,
      car: car.name,
      ...(car.id !== undefined && { carId: car.id }),
      ...partRefOf(car, check.part),
      rig: this.tools.bench.rig?.way === 'virtual' ? virtualRig : (this.tools.bench.rig?.serial ?? ''),
      results: [],
    };
    for (const step of check.wiring) await this.tools.person(wiringWords(step));
    const meter = this.tools.meter?.();
    this.tools.bench.tell({ kind: 'run', runId: this.#runId, checkId: check.id, car, startedAt, meter });
    await this.tools.logbook.begin(this.#summary);
  }
  /** The person did what was asked; `typed` is the figure where one is wanted. */
  async done(typed = ''): Promise<void> {
    const ask = this.#ask;
    if (!ask) return;
    const figure = ask.wanted && askedNumber(typed, ask.wanted);
    this.#askTrouble = figure && !figure.ok ? figure.words : null;
    if (this.#askTrouble !== null) return;
    this.#ask = null;
    await this.tools.person(ask.words);
    this.#answer(ask, figure?.ok ? figure.value : undefined);
  }
  /** The person at the virtual bench reads the figure in the one's stead who sits before the page. */
  async readAtVirtualBench(): Promise<void> {
    const ask = this.#ask;
    if (!ask) return;
    const figure = await this.tools.person(ask.words);
    if (this.#ask !== ask) return;
    this.#askTrouble =
      figure === undefined
        ? 'The person at the virtual bench can read nothing there. Type the figure.'
        : null;
    if (figure === undefined) return;
    this.#ask = null;
    this.#answer(ask, figure);
  }
  #answer({ askId }: Ask, figure?: number): void {
    this.tools.bench.tell({ kind: 'done', askId, figure });
  }
  hear(message: FromBench): void {
    if (message.kind === 'trouble' && message.during === 'run') this.#fail(message.words);
    if (!('runId' in message) && message.kind !== 'trace') return;
    if (message.kind === 'trace') {
      if (message.trace.runId === this.#runId) this.traces.append(message.trace, message.fresh);
    } else if (message.runId !== this.#runId) return;
    else if (message.kind === 'progress') this.#doing = message;
    else if (message.kind === 'ask') this.#hearAsk(message);
    else if (message.kind === 'finished') void this.#finish(message.text);
  }
  #hearAsk({ askId, words, wanted }: Ask): void {
    this.#asked++;
    this.#ask = { askId, words, wanted };
    this.#askTrouble = null;
  }
  #fail(words: string): void {
    this.#trouble = words;
    this.#running = false;
    const summary = this.#summary;
    if (summary) this.#tellEnd(summary, { verdict: 'not measured', ending: 'failed', words, rigS: 0 });
    if (summary) void this.tools.logbook.end({ ...summary, endedAt: this.#stamp(), event: words }, null);
    this.#summary = null;
  }
  async #finish(text: string): Promise<void> {
    const check = this.#check!;
    const opened = openRun(text, { title: check.title, part: check.part, rig: this.#summary?.rig ?? '' });
    this.#running = false;
    this.#ask = null;
    this.#opened = opened;
    this.#summary = null;
    this.#tellEnd(opened.summary, opened.end);
    await this.tools.logbook.end({ ...opened.summary, endedAt: this.#stamp() }, text);
    this.tools.bench.tell({ kind: 'kept', runId: opened.summary.id });
  }
  #tellEnd({ id: runId, checkId: check, car }: RunSummary, end: RunEnd): void {
    this.tools.ended?.({ runId, check, car, end, asked: this.#asked });
  }
  #stamp(): string {
    return new Date(this.tools.now()).toISOString();
  }
}
