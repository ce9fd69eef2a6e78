// SPDX-License-Identifier: MIT
// Sound and vibration for who looks at the car and not at the screen: while holding to go live, on a verdict, a trip, a
// lost link. All is off unless chosen, and everything it tells stands on the screen too.
import type { RunEnd } from '#checks/plans/outcomes';
import type { Glide, Note, Sounder } from '../adapters/tones.ts';
import type { FromBench } from '../worker/messages.ts';
import type { RunEars } from './bench.svelte.ts';

interface Memory {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}
export type Cue = RunEnd['verdict'] | 'trip';

const row = (lengthS: number, ...hz: number[]): readonly Note[] =>
  hz.map((each, k) => ({ hz: each, atS: k * lengthS, lengthS }));
const spaced = (lengthS: number, count: number, hz: number): readonly Note[] =>
  Array.from({ length: count }, (_, k) => ({ hz, atS: k * 1.5 * lengthS, lengthS }));
/** Each under half a second. Up a fifth, the same twice, down a fourth, once; a trip is low and quick. */
const notes: Readonly<Record<Cue, readonly Note[]>> = {
  pass: row(0.2, 523, 784),
  undecided: spaced(0.16, 2, 587),
  fail: row(0.2, 587, 440),
  'not measured': row(0.25, 440),
  trip: spaced(0.1, 3, 220),
};
/** How long a person holds to go live, s. */
export const holdS = 1;
/** Low, up an octave; the rig is live where it ends, with a click. */
const rise: Glide = { fromHz: 147, toHz: 294, lengthS: holdS };
const click = row(0.04, 1175);
const shakes: Readonly<Record<Cue, readonly number[]>> = {
  pass: [80],
  undecided: [80, 80, 80],
  fail: [200],
  'not measured': [40],
  trip: [80, 40, 80, 40, 200],
};

export class Cues implements RunEars {
  #sound = $state(false);
  #vibration = $state(false);
  #holdTone = $state(true);
  #letGo: () => void = () => {};
  #level = $state(0.6);
  #phase = '';

  constructor(
    private readonly sounder: Sounder,
    private readonly memory: Memory,
  ) {
    this.#sound = memory.getItem('sound') === 'on';
    this.#vibration = memory.getItem('vibration') === 'on';
    this.#holdTone = memory.getItem('sound while holding') !== 'off';
    const level = Number(memory.getItem('sound level') ?? 0.6);
    if (level > 0 && level <= 1) this.#level = level;
  }
  get sound(): boolean {
    return this.#sound;
  }
  get vibration(): boolean {
    return this.#vibration;
  }
  /** With sound alone. */
  get holdTone(): boolean {
    return this.#holdTone;
  }
  /** 0.1 to 1. */
  get level(): number {
    return this.#level;
  }
  /** What was chosen is played at once, so that a person hears what it is like. */
  chooseSound(on: boolean): void {
    this.#sound = on;
    this.memory.setItem('sound', on ? 'on' : 'off');
    if (on) this.give('pass');
  }
  chooseVibration(on: boolean): void {
    this.#vibration = on;
    this.memory.setItem('vibration', on ? 'on' : 'off');
    if (on) this.give('pass');
  }
  chooseHoldTone(on: boolean): void {
    this.#holdTone = on;
    this.memory.setItem('sound while holding', on ? 'on' : 'off');
  }
  /** Someone holds to go live: it sounds until they let go or the rig is live. */
  hold(): void {
    if (this.#sound && this.#holdTone) this.#letGo = this.sounder.glide(rise, this.#level);
  }
  letGo(): void {
    this.#letGo();
    this.#letGo = () => {};
  }
  live(): void {
    this.letGo();
    if (this.#sound && this.#holdTone) this.sounder.play(click, this.#level);
  }
  chooseLevel(level: number): void {
    this.#level = level;
    this.memory.setItem('sound level', String(level));
    this.give('pass');
  }
  /** A run that was cut off by a trip or a lost link was told already. */
  ended({ verdict, ending }: Pick<RunEnd, 'verdict' | 'ending'>): void {
    if (ending !== 'tripped' && ending !== 'link lost') this.give(verdict);
  }
  hear(message: FromBench): void {
    if (message.kind !== 'phase') return;
    const { phase } = message;
    if (phase !== this.#phase && (phase === 'tripped' || phase === 'lost')) this.give('trip');
    this.#phase = phase;
  }
  give(cue: Cue): void {
    if (this.#sound) this.sounder.play(notes[cue], this.#level);
    if (this.#vibration) this.sounder.vibrate(shakes[cue]);
  }
}
