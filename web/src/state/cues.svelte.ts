// SPDX-License-Identifier: MIT
// Sound and vibration for who looks at the car and not at the screen: on a verdict, a trip, a lost link. Both are off
// unless chosen, and everything they tell stands on the screen too.
import type { RunEnd } from '#checks/plans/outcomes';
import type { Note, Sounder } from '../adapters/tones.ts';
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
  #level = $state(0.6);
  #phase = '';

  constructor(
    private readonly sounder: Sounder,
    private readonly memory: Memory,
  ) {
    this.#sound = memory.getItem('sound') === 'on';
    this.#vibration = memory.getItem('vibration') === 'on';
    const level = Number(memory.getItem('sound level') ?? 0.6);
    if (level > 0 && level <= 1) this.#level = level;
  }
  get sound(): boolean {
    return this.#sound;
  }
  get vibration(): boolean {
    return this.#vibration;
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
