// SPDX-License-Identifier: MIT
// What a person does at the supply of the virtual bench: unplugs the servo and plugs it again.
import type { Hand } from './bench-person.ts';

export const supplyHand: Hand = (car, words) => {
  if (/\bunplug\b.*\bservo\b/i.test(words)) car.servoPlugged = false;
  else if (/\bplug\b.*\bservo\b/i.test(words)) car.servoPlugged = true;
  return undefined;
};
