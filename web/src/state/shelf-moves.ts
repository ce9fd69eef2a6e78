// SPDX-License-Identifier: MIT
// What can be done with the parts of the car on the bench and with loose ones, each as words and an act. A part that
// moves takes its identity along, and by that its history. Pure.
import type { Car, PartKind } from '#core/parts/part';
import * as shelves from '#core/parts/shelf';
import { figure } from './figures.ts';
import type { SetUpEntry, SetUpKind } from '#core/parts/set-up';

export interface Move {
  readonly words: string;
  readonly act: (shelf: shelves.ShelfContent) => shelves.ShelfContent;
}
const optional: readonly PartKind[] = ['radio', 'leads', 'drive'];

/** For the part of this kind in the car on the bench. */
export function movesOf(shelf: shelves.ShelfContent, kind: PartKind): Move[] {
  const car = shelves.carOnBench(shelf);
  return [...fits(shelf, car, kind), ...swaps(shelf, car, kind), ...takings(car, kind)];
}
function fits({ loose }: shelves.ShelfContent, car: Car, kind: PartKind): Move[] {
  return loose
    .filter(({ part }) => part.kind === kind)
    .map(({ part: { name } }) => ({
      words: car[kind] ? `Fit ${name}, lay ${car[kind].name} on the shelf` : `Fit ${name}`,
      act: (shelf) => shelves.fitPart(shelf, car.name, kind, name),
    }));
}
function swaps({ cars }: shelves.ShelfContent, car: Car, kind: PartKind): Move[] {
  const part = car[kind];
  if (!part) return [];
  return cars
    .filter(({ name }) => name !== car.name)
    .map((other) => ({
      words: other[kind]
        ? `Swap ${part.name} for ${other[kind].name} of ${other.name}`
        : `Move ${part.name} into ${other.name}`,
      act: (shelf) => shelves.swapParts(shelf, kind, car.name, other.name),
    }));
}
function takings(car: Car, kind: PartKind): Move[] {
  const part = car[kind];
  if (!part || !optional.includes(kind)) return [];
  return [
    {
      words: `Take ${part.name} out, lay it on the shelf`,
      act: (shelf) => shelves.takeOut(shelf, car.name, kind),
    },
  ];
}
export const removedName = (item: shelves.Removed): string => ('part' in item ? item.part.name : item.name);
export const partsLine = ({ motor, servo, controller, pack }: Car): string =>
  [motor, servo, controller, pack].map(({ name }) => name).join(', ');

const titles: Readonly<Record<SetUpKind, string>> = {
  'end-points': 'End points',
  gearing: 'Gearing',
  timing: 'Timing',
  'rail-setting': 'Receiver rail',
};
/** "End points", "1120 to 1880 µs". */
export function setUpWords({ what, figures: read }: SetUpEntry): readonly [what: string, value: string] {
  return [titles[what], Object.keys(read).length > 0 ? valueWords[what](read) : 'taken out'];
}
const valueWords: Readonly<Record<SetUpKind, (read: SetUpEntry['figures']) => string>> = {
  'end-points': ({ shortUs, longUs }) => `${figure(shortUs, 0)} to ${figure(longUs, 0)} µs`,
  gearing: ({ pinionTeeth, spurTeeth, internalRatio, tyreDiameterM }) =>
    `${pinionTeeth} on ${spurTeeth}, internal ${figure(internalRatio, 2)}, tyre ${figure(tyreDiameterM * 1000, 1)} mm`,
  timing: ({ timingDegrees }) => `${figure(timingDegrees, 0)}°`,
  'rail-setting': ({ railSettingV }) => `${figure(railSettingV, 1)} V`,
};
