// SPDX-License-Identifier: MIT
// What a person does at the motor: turns the rotor by hand, moves the sensor cable.
import type { Hand } from './bench-person.ts';

/** "Turn the rotor by hand the other way", "Take your hands off the rotor". */
export const motorHand: Hand = ({ hand, cable }, words) => {
  const said = words.toLowerCase();
  if (!/\brotor\b/.test(said)) return undefined;
  cable.moved = /\bmove the sensor cable\b/.test(said);
  if (/\bhands off\b/.test(said)) hand.turn(0);
  else if (/\bthe other way\b/.test(said)) hand.turn(-1);
  else if (/\bturn\b/.test(said)) hand.turn(1);
  return undefined;
};
