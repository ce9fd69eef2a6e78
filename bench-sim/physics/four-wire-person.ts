// SPDX-License-Identifier: MIT
// What a person does with clips, probe tips and the probe's jumper, told from the words of a step.
import type { Hand } from './bench-person.ts';

const pairs = [/\bphases? a and b\b/, /\bphases? b and c\b/, /\bphases? c and a\b/];

export const fourWireHand: Hand = (car, words) => {
  const said = words.toLowerCase();
  const jumper = /\bjumper\b.*\bx(5|50)\b/.exec(said);
  if (jumper) car.setProbeJumper(jumper[1] === '5');
  if (!/\bprobe tips\b/.test(said)) return undefined;
  const pair = pairs.findIndex((told) => told.test(said));
  const joint = car.car.joints.find(({ name }) => said.includes(name.toLowerCase()));
  if (pair >= 0) car.probe.put({ pair: pair as 0 | 1 | 2 });
  else car.probe.put(joint ? { joint } : null);
  return undefined;
};
