// SPDX-License-Identifier: MIT
// The list of a car's joints, one longer or one shorter; undefined where none is left. Pure.
import type { Car, Joint } from '#core/parts/part';

export function oneMore({ leads }: Car): Joint[] {
  const joints = leads?.joints ?? [];
  const taken = new Set(joints.map(({ name }) => name.toLowerCase()));
  let number = joints.length + 1;
  while (taken.has(`joint ${number}`)) number++;
  return [...joints, { name: `joint ${number}`, kind: 'solder' }];
}
export function oneLess({ leads }: Car): Joint[] | undefined {
  const joints = leads?.joints?.slice(0, -1) ?? [];
  return joints.length > 0 ? joints : undefined;
}
