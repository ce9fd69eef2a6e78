// SPDX-License-Identifier: MIT
// What a person does at radio, receiver and the car's own pack plug, told from the words of a step.
import type { Hand } from './bench-person.ts';

interface Position {
  readonly said: RegExp;
  readonly at: number;
}
const wheelAt: readonly Position[] = [
  { said: /\bwheel fully left\b/, at: -1 },
  { said: /\bwheel fully right\b/, at: 1 },
  { said: /\bwheel centred\b|\bhands off\b/, at: 0 },
];
const triggerAt: readonly Position[] = [
  { said: /\btrigger fully pulled\b/, at: 1 },
  { said: /\btrigger half pulled\b/, at: 0.5 },
  { said: /\btrigger fully pushed\b/, at: -1 },
  { said: /\btrigger released\b|\bhands off\b/, at: 0 },
];
const told = (positions: readonly Position[], words: string): number | undefined =>
  positions.find(({ said }) => said.test(words))?.at;

export const atTheRadio: Hand = (car, words) => {
  const said = words.toLowerCase();
  car.radio.wheel = told(wheelAt, said) ?? car.radio.wheel;
  car.radio.trigger = told(triggerAt, said) ?? car.radio.trigger;
  if (/\btransmitter (is )?off\b/.test(said)) car.radio.turn(false);
  else if (/\btransmitter (is )?on\b/.test(said)) car.radio.turn(true);
  if (/\bpack straight into the car\b/.test(said)) car.packStraight = true;
  else if (/\bpack out of the car\b/.test(said)) car.packStraight = false;
  return undefined;
};
