// SPDX-License-Identifier: MIT
// Which joints of a car are probed, in which order, and what their results are called. Small plugs of the receiver rail
// don't carry the current of the pack load: the source resistance of the rail has them.
import type { ResultName } from '#core/measurements/finding';
import type { Car, Joint } from '#core/parts/part';

export interface ListedJoint extends Joint {
  /** Place in the car's list, from 1. */
  readonly number: number;
}
/** Where nobody has entered any: what every car has. */
const usual: readonly Joint[] = [
  { name: 'plus plug of the pack', kind: 'bullet' },
  { name: 'minus plug of the pack', kind: 'bullet' },
];
export const jointsOf = ({ leads }: Car): ListedJoint[] =>
  (leads?.joints ?? usual)
    .map((joint, k) => ({ ...joint, number: k + 1 }))
    .filter(({ kind }) => kind !== 'plug');

export function resultOf({ name, number, kind }: ListedJoint): ResultName {
  const title = `${name[0].toUpperCase()}${name.slice(1)}${kind === 'lead' ? ' at 20 °C' : ''}`;
  return { id: `joint-${number}`, title, unit: 'ohm' };
}
