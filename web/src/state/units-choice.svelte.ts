// SPDX-License-Identifier: MIT
// The units that the person chose for what charts show and measure. Everything inside stays SI.
import { temperatures, type Temperature } from './chart-units.ts';

interface Memory {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
}
const key = 'temperature';

export class UnitsChoice {
  #temperature = $state<Temperature>('celsius');

  constructor(private readonly memory: Memory) {
    this.#temperature = temperatures.find((each) => each === memory.getItem(key)) ?? 'celsius';
  }
  get temperature(): Temperature {
    return this.#temperature;
  }
  choose(temperature: Temperature): void {
    this.#temperature = temperature;
    this.memory.setItem(key, temperature);
  }
}
