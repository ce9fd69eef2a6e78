// SPDX-License-Identifier: MIT
// The rig as the page sees it: phase, description, newest values, what went wrong. It speaks to the bench worker
// through typed messages and draws nothing. The run in progress is told to `RunState`.
import {
  fromBenchSchema,
  type CheckCard,
  type FromBench,
  type RigCard,
  type RigPhase,
  type ToBench,
} from '../worker/messages.ts';
import type { LiveValue } from './chain-view.ts';
import { ageWords } from './figures.ts';

export interface BenchPort {
  post(message: ToBench, transfer?: Transferable[]): void;
  listen(receive: (message: unknown) => void): void;
  wake(): void;
}
/** What happens in the run; RunState implements it. */
export interface RunEars {
  hear(message: FromBench): void;
}
interface Seen {
  readonly value: number | null;
  readonly atMs: number;
}

export class Bench {
  #phase = $state<RigPhase>('none');
  #words = $state('');
  #trouble = $state<string | null>(null);
  #rig = $state.raw<RigCard | null>(null);
  #catalogue = $state.raw<readonly CheckCard[]>([]);
  #values = $state.raw<ReadonlyMap<string, Seen>>(new Map());
  #rowsPerS = $state(0);
  #lostRows = $state(0);
  #feedOn = $state(false);
  #nowMs = $state(0);
  #ears: RunEars[] = [];

  constructor(
    private readonly port: BenchPort,
    private readonly now: () => number,
  ) {
    this.#nowMs = now();
    port.listen((message) => this.#hear(message));
  }
  get phase(): RigPhase {
    return this.#phase;
  }
  /** Feed on or outputs live: stop is drawn solid. */
  get energised(): boolean {
    return this.#phase === 'live' || this.#feedOn;
  }
  get connected(): boolean {
    return this.#phase === 'safe' || this.#phase === 'live' || this.#phase === 'tripped';
  }
  get words(): string {
    return this.#words;
  }
  get trouble(): string | null {
    return this.#trouble;
  }
  get rig(): RigCard | null {
    return this.#rig;
  }
  get checks(): readonly CheckCard[] {
    return this.#catalogue;
  }
  get rowsPerS(): number {
    return this.#rowsPerS;
  }
  get lostRows(): number {
    return this.#lostRows;
  }
  get nowMs(): number {
    return this.#nowMs;
  }
  check(id: string): CheckCard | undefined {
    return this.#catalogue.find((check) => check.id === id);
  }
  /** Newest value of a tap; null while it never delivered. Fresh means younger than 500 ms. */
  readonly live = (tap: string): LiveValue | null => {
    const seen = this.#values.get(tap);
    if (!seen) return null;
    const unit = this.#rig?.taps.find((each) => each.id === tap)?.unit ?? '';
    const fresh = this.#nowMs - seen.atMs < 500;
    return { value: seen.value, unit, fresh, age: ageWords(seen.atMs, this.#nowMs) };
  };
  tell(message: ToBench, transfer?: Transferable[]): void {
    this.port.post(message, transfer);
  }
  /** Begins the bench without asking it for anything: its checks are told then. */
  wake(): void {
    this.port.wake();
  }
  attend(ears: RunEars): void {
    this.#ears.push(ears);
  }
  stop(): void {
    this.tell({ kind: 'stop' });
  }
  close(): void {
    this.tell({ kind: 'close' });
  }
  forgetTrouble(): void {
    this.#trouble = null;
  }
  report(words: string): void {
    this.#trouble = words;
  }
  /** Called ten times a second by the page: keeps the beats going and ages the plates. */
  tick(): void {
    this.#nowMs = this.now();
    this.tell({ kind: 'tick' });
  }
  #hear(message: unknown): void {
    const read = fromBenchSchema.safeParse(message);
    if (!read.success) {
      this.#trouble = `The bench worker sent something unreadable: ${read.error.issues[0]?.message ?? 'no reason'}. Reload the page.`;
      return;
    }
    this.#take(read.data);
    for (const ears of this.#ears) ears.hear(read.data);
  }
  #take(message: FromBench): void {
    if (message.kind === 'catalogue') this.#catalogue = message.checks;
    else if (message.kind === 'phase') this.#enter(message.phase, message.words);
    else if (message.kind === 'rig') this.#rig = message.rig;
    else if (message.kind === 'trouble') this.#trouble = message.words;
    else if (message.kind === 'live') this.#takeLive(message);
  }
  #enter(phase: RigPhase, words: string): void {
    this.#phase = phase;
    this.#words = words;
    if (phase === 'safe' || phase === 'opening') this.#trouble = null;
    if (phase === 'none' || phase === 'lost') this.#feedOn = false;
  }
  #takeLive(message: Extract<FromBench, { kind: 'live' }>): void {
    const atMs = this.now();
    const values = new Map(this.#values);
    for (const { tap, value } of message.values) values.set(tap, { value, atMs });
    this.#values = values;
    this.#rowsPerS = message.rowsPerS;
    this.#lostRows = message.lostRows;
    this.#feedOn = message.feedOn;
    this.#nowMs = atMs;
  }
}
