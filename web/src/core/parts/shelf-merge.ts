// SPDX-License-Identifier: MIT
// A shelf from a file put together with the one that is here: what is new joins, what is here stays as it is, what
// differs under one name is told. Pure.
import { withoutIdentity } from './identity.ts';
import type { Car } from './part.ts';
import { allParts, shelfSchema, type ShelfContent } from './shelf.ts';

export interface ShelfMerge {
  readonly shelf: ShelfContent;
  /** Names of cars and loose parts that joined. */
  readonly added: readonly string[];
  /** Names under which the file holds something else than is here. */
  readonly differing: readonly string[];
  /** Parts that joined under the name of one that is here: they count as one, with one history. */
  readonly shared: readonly string[];
}
/** As it goes into a file: what was taken away stays here. */
export function forFile({ removed: _stays, ...shelf }: ShelfContent): ShelfContent {
  return shelf;
}
/** `example` gives way where it is all there is and nobody has changed it: the file's shelf takes its place. */
export function arrivingShelf(here: ShelfContent, file: ShelfContent, example: Car): ShelfMerge {
  const untouched = here.cars.length === 1 && here.loose.length === 0 && text(here.cars[0]) === text(example);
  if (!untouched) return mergedShelf(here, file);
  const { added, differing } = mergedShelf(here, file);
  const shelf = { ...forFile(file), ...(here.removed && { removed: here.removed }) };
  return { shelf, added: [...added, ...differing], differing: [], shared: [] };
}
export function mergedShelf(here: ShelfContent, file: ShelfContent): ShelfMerge {
  const [cars, loose] = [
    joined(here.cars, file.cars, ({ name }) => name),
    joined(here.loose, file.loose, looseName),
  ];
  const shelf = shelfSchema.parse({ ...here, cars: cars.all, loose: loose.all });
  return {
    shelf,
    added: [...cars.added, ...loose.added],
    differing: [...cars.differing, ...loose.differing],
    shared: sharedParts(here, shelf),
  };
}
function sharedParts(here: ShelfContent, merged: ShelfContent): string[] {
  const names = (shelf: ShelfContent) => allParts(shelf).map(({ kind, name }) => `${kind} ${name}`);
  const known = names(here);
  const more = (name: string) => names(merged).filter((each) => each === name).length;
  const less = (name: string) => known.filter((each) => each === name).length;
  return [...new Set(known)].filter((name) => more(name) > less(name));
}
const looseName = ({ part }: ShelfContent['loose'][number]) => `${part.kind} ${part.name}`;

function joined<Item>(here: readonly Item[], file: readonly Item[], name: (item: Item) => string) {
  const known = new Map(here.map((item) => [name(item), text(item)]));
  const fresh = file.filter((item) => !known.has(name(item)));
  const differing = file.filter((item) => known.has(name(item)) && known.get(name(item)) !== text(item));
  return { all: [...here, ...fresh], added: fresh.map(name), differing: differing.map(name) };
}
const text = (item: unknown): string => JSON.stringify(sorted(withoutIdentity(item)));

/** Keys in one order, so that equal things have equal text. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .toSorted(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, each]) => [key, sorted(each)]),
  );
}
