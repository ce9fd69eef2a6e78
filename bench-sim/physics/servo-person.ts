// SPDX-License-Identifier: MIT
// What a person does with a servo's horn and reads on the protractor beside it, told from the words of a step.
import type { Hand } from './bench-person.ts';

export const hornHand: Hand = ({ servo }, words) => {
  const said = words.toLowerCase();
  const shaftRad = servo.hornRad - servo.linkage.slippedRad;
  if (/\bput the horn on\b/.test(said)) servo.horn.putOn(shaftRad);
  return /\bprotractor\b/.test(said) ? servo.horn.read(shaftRad) : undefined;
};
