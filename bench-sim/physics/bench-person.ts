// SPDX-License-Identifier: MIT
// What a person at the bench does, told from the words of a step. Unknown words do nothing.
import { fourWireHand } from './four-wire-person.ts';
import { atTheRadio } from './control-person.ts';
import { linkageHand } from './linkage-person.ts';
import { endBellHand, meshHand, motorHand } from './motor-person.ts';
import { supplyHand } from './supply-person.ts';
import { hornHand } from './servo-person.ts';
import type { CarPlant } from './whole-plant.ts';

export type Act = 'block' | 'free' | 'switch on' | 'switch off';

/** "Lay the horn against the block" is 'block', "Take the block away" is 'free'. */
export function actIn(words: string): Act | null {
  const said = words.toLowerCase();
  if (/\bswitch(ed)?\b.*\boff\b/.test(said)) return 'switch off';
  if (/\bswitch(ed)?\b.*\bon\b/.test(said)) return 'switch on';
  if (/\bfree\b|\b(take|remove|lift|move|pull)\b.*\bblock\b/.test(said)) return 'free';
  return /\bblock\b/.test(said) ? 'block' : null;
}

/** One kind of thing a person does at this car; gives the figure that the words ask for, if it can read one. */
export type Hand = (car: CarPlant, words: string) => number | undefined;

const blockAndSwitch: Hand = ({ servo, controller }, words) => {
  const done = actIn(words);
  if (done === 'block') servo.block();
  else if (done === 'free') servo.free();
  else if (done !== null) controller.switchedOn = done === 'switch on';
  return undefined;
};
const hands: readonly Hand[] = [
  blockAndSwitch,
  atTheRadio,
  fourWireHand,
  linkageHand,
  hornHand,
  motorHand,
  meshHand,
  endBellHand,
  supplyHand,
];

/** What is wired changes how the servo is hitched; leads and clips of the virtual car are always where they belong. */
const wired = /^Wire: /;

export function personDoes(car: CarPlant, words: string): number | undefined {
  const figures = (wired.test(words) ? [linkageHand] : hands).map((hand) => hand(car, words));
  return figures.find((figure) => figure !== undefined);
}
