// SPDX-License-Identifier: MIT
// A guided calibration as the page leads it: which taps, with what meter, what is asked now, the points taken, how it
// ended. The worker does it; this only asks and is told.
import { meterSchema, usualMeter, type Meter } from '#core/calibration/meter';
import type { CalibrationPoint } from '#core/calibration/line-calibration';
import type { CalibrationAsk, CalibrationWish, TapOutcome } from '../worker/calibration-messages.ts';
import type { FromBench } from '../worker/messages.ts';
import type { Bench, RunEars } from './bench.svelte.ts';
import type { RigWays } from './rig-ways.svelte.ts';
import type { Shelf } from './shelf.svelte.ts';
import { SeenTaps } from './seen-taps.svelte.ts';
import type { SteadyReading } from './steady-reading.ts';

interface Memory {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}
export interface CalibrationTools {
  readonly bench: Bench;
  readonly shelf: Shelf;
  readonly ways: Pick<RigWays, 'person' | 'takeMeter' | 'readMeter' | 'keepMemory'>;
  readonly memory: Memory;
  readonly now: () => number;
}
export interface CalibrationEnding {
  readonly outcomes: readonly TapOutcome[];
  readonly stored: boolean;
  readonly words: string;
}
interface Asked {
  readonly askId: number;
  readonly ask: CalibrationAsk;
}

export class Calibration implements RunEars {
  #meter = $state.raw<Meter>(usualMeter);
  #meterKnown = $state(false);
  #chosen = $state.raw<readonly string[]>([]);
  #running = $state(false);
  #asked = $state.raw<Asked | null>(null);
  #setup = $state('');
  #doing = $state('');
  #points = $state.raw<ReadonlyMap<string, readonly CalibrationPoint[]>>(new Map());
  #ending = $state.raw<CalibrationEnding | null>(null);
  #trouble = $state<string | null>(null);
  readonly #seen = new SeenTaps();
  thermistorsIn = $state<CalibrationWish['thermistorsIn']>('ice');
  feedBy = $state<CalibrationWish['feedBy']>('meter');

  constructor(private readonly tools: CalibrationTools) {
    const kept = keptMeter(tools.memory);
    if (kept) [this.#meter, this.#meterKnown] = [kept, true];
    tools.bench.attend(this);
  }
  get meter(): Meter {
    return this.#meter;
  }
  /** False until a person has said what their meter is. */
  get meterKnown(): boolean {
    return this.#meterKnown;
  }
  get chosen(): readonly string[] {
    return this.#chosen;
  }
  get running(): boolean {
    return this.#running;
  }
  get ask(): CalibrationAsk | null {
    return this.#asked?.ask ?? null;
  }
  /** What the person set last: it stands while the meter is read. */
  get setup(): string {
    return this.#setup;
  }
  get doing(): string {
    return this.#doing;
  }
  /** Taps that the question is about; the points so far where nothing is asked. */
  get taps(): readonly string[] {
    const asked = this.ask?.taps ?? [];
    return asked.length > 0 ? asked : [...this.#points.keys()];
  }
  get points(): ReadonlyMap<string, readonly CalibrationPoint[]> {
    return this.#points;
  }
  get ending(): CalibrationEnding | null {
    return this.#ending;
  }
  get trouble(): string | null {
    return this.#trouble;
  }
  /** The day, ISO 8601. */
  get today(): string {
    return new Date(this.tools.now()).toISOString().slice(0, 10);
  }
  reading(tap: string): SteadyReading {
    const range = this.tools.bench.rig?.taps.find(({ id }) => id === tap) ?? { low: 0, high: 1 };
    return this.#seen.reading(tap, range, this.tools.bench.nowMs);
  }
  choose(tap: string, on: boolean): void {
    const others = this.#chosen.filter((each) => each !== tap);
    this.#chosen = on ? [...others, tap] : others;
  }
  keepMeter(meter: Meter): void {
    [this.#meter, this.#meterKnown] = [meter, true];
    this.tools.memory.setItem('meter', JSON.stringify(meter));
  }
  /** What is missing before it can start, as one sentence; null when nothing is. */
  get missing(): string | null {
    if (this.tools.bench.phase === 'tripped') return 'The rig has tripped: clear it first, under Rig.';
    if (this.#chosen.length === 0) return 'Choose at least one tap.';
    return this.#meterKnown ? null : 'Say first what your meter is.';
  }
  start(): void {
    if (this.#running || this.missing) return;
    const { bench, shelf, ways } = this.tools;
    this.clear();
    this.#running = true;
    ways.takeMeter(this.#meter);
    const { thermistorsIn, feedBy, today } = this;
    const wish = {
      taps: [...this.#chosen],
      meter: this.#meter,
      car: shelf.car,
      today,
      thermistorsIn,
      feedBy,
    };
    bench.tell({ kind: 'calibrate', wish });
  }
  /** What was asked is done at the bench: on the virtual one its person does it. */
  async done(): Promise<void> {
    const asked = this.#asked;
    if (asked?.ask.kind !== 'act') return;
    this.#setup = asked.ask.words;
    await this.tools.ways.person(this.#setup);
    if (this.#asked === asked) this.#answer(null);
  }
  /** What the meter shows; null where that is no number. */
  enter(value: number | null): void {
    if (this.#asked?.ask.kind === 'read') this.#answer(value);
  }
  /** The virtual person reads the virtual meter; null where the rig is real. */
  virtualReading(): Promise<number | null> {
    const ask = this.ask;
    return ask?.kind === 'read' ? this.tools.ways.readMeter(ask.place) : Promise.resolve(null);
  }
  /** Back to choosing. */
  clear(): void {
    if (this.#running) return;
    [this.#asked, this.#ending, this.#trouble] = [null, null, null];
    [this.#setup, this.#doing, this.#points] = ['', '', new Map()];
  }
  hear(message: FromBench): void {
    if (message.kind === 'live' && this.#running) this.#seen.add(message.values, this.tools.now());
    else if (message.kind === 'calibrationAsk') this.#take(message);
    else if (message.kind === 'calibrationDoing') this.#doing = message.words;
    else if (message.kind === 'calibrationPoint') this.#add(message.tap, message.point);
    else if (message.kind === 'calibrationEnded') this.#end(message);
    else if (message.kind === 'trouble' && message.during === 'calibrate') this.#fail(message.words);
  }
  #take({ askId, ask }: Extract<FromBench, { kind: 'calibrationAsk' }>): void {
    const before = this.#points;
    // Another wiring: its taps begin without points.
    const known = ask.taps.some((tap) => before.has(tap)) || ask.taps.length === 0;
    if (!known) this.#points = new Map();
    this.#asked = { askId, ask };
    this.#doing = '';
  }
  #answer(value: number | null): void {
    this.tools.bench.tell({ kind: 'calibrationAnswer', askId: this.#asked!.askId, value });
    this.#asked = null;
  }
  #add(tap: string, point: CalibrationPoint): void {
    const points = new Map(this.#points);
    points.set(tap, [...(points.get(tap) ?? []), point]);
    this.#points = points;
  }
  #end({ outcomes, stored, words }: CalibrationEnding): void {
    this.#close();
    this.#ending = { outcomes, stored, words };
    this.#chosen = [];
    if (stored) void this.tools.ways.keepMemory();
  }
  #fail(words: string): void {
    this.#close();
    this.#trouble = words;
  }
  #close(): void {
    this.#running = false;
    this.#asked = null;
    this.tools.ways.takeMeter(null);
  }
}
function keptMeter(memory: Memory): Meter | null {
  try {
    return meterSchema.parse(JSON.parse(memory.getItem('meter') ?? 'null'));
  } catch {
    return null;
  }
}
