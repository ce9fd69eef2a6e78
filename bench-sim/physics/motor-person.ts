// SPDX-License-Identifier: MIT
// What a person does at the motor and its drive train: turns the rotor by hand, moves the sensor cable, meshes the
// gears with the paint dot at the top, turns the spur on.
import type { Hand } from './bench-person.ts';
import { endBellMarks, setTiming } from './motor-timing.ts';

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

/** "Turn the spur until its paint dot stands at the top", "Turn the spur on by hand", "Hands off the spur". */
export const meshHand: Hand = ({ hand, train }, words) => {
  const said = words.toLowerCase();
  if (!/\bspur\b/.test(said)) return undefined;
  if (/\bpaint dot\b/.test(said)) train.dotUp();
  else if (/\bhands off\b/.test(said)) hand.turn(0);
  else if (/\bturn\b/.test(said)) hand.turn(1);
  return undefined;
};

/** "Set the end bell to its mark 2 of 3": sets it and reads the degrees. */
export const endBellHand: Hand = ({ car }, words) => {
  if (/\bhow many marks of the end bell\b/.test(words.toLowerCase())) return endBellMarks.length - 1;
  const mark = /\bend bell\b.*\bmark (\d)/.exec(words.toLowerCase());
  if (!mark) return undefined;
  const degrees = endBellMarks[Number(mark[1]) - 1];
  if (degrees !== undefined) setTiming(car.motor, degrees);
  return degrees;
};
