// SPDX-License-Identifier: MIT
// A shelf from a file put together with the one that is here: what is new joins, what is here stays as it is, what
// differs under one name is told. Pure.
import { shelfSchema, type ShelfContent } from './shelf.ts';

export interface ShelfMerge {
  readonly shelf: ShelfContent;
  /** Names of cars and loose parts that joined. */
  readonly added: readonly string[];
  /** Names under which the file holds something else than is here. */
  readonly differing: readonly string[];
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
  };
}
const looseName = ({ part }: ShelfContent['loose'][number]) => `${part.kind} ${part.name}`;

function joined<Item>(here: readonly Item[], file: readonly Item[], name: (item: Item) => string) {
  const known = new Map(here.map((item) => [name(item), JSON.stringify(sorted(item))]));
  const fresh = file.filter((item) => !known.has(name(item)));
  const differing = file.filter(
    (item) => known.has(name(item)) && known.get(name(item)) !== JSON.stringify(sorted(item)),
  );
  return { all: [...here, ...fresh], added: fresh.map(name), differing: differing.map(name) };
}
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
