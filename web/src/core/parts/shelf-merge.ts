// SPDX-License-Identifier: MIT
// A shelf from a file put together with the one that is here. What is new joins; a car that differs from the one here is
// kept, replaced or put beside, as a person chose; two parts of one name and different identity stay two. Pure.
import { isOfPart, isSameCar, withoutIdentity } from './identity.ts';
import { partKinds, partRefOf, type Car, type PartKind } from './part.ts';
import { addCar, allParts, freeNameAmong, shelfSchema, type Part, type ShelfContent } from './shelf.ts';

export type CarChoice = 'mine' | 'theirs' | 'both';
/** A car of the file and the one here that it differs from. */
export interface DifferingCar {
  readonly mine: Car;
  readonly theirs: Car;
  /** One car that was changed, not two that share a name. */
  readonly same: boolean;
}
export interface Renamed {
  readonly kind: PartKind;
  readonly from: string;
  readonly to: string;
}
export interface ShelfMerge {
  readonly shelf: ShelfContent;
  /** Names of cars and loose parts that joined or took the place of another. */
  readonly added: readonly string[];
  readonly differing: readonly DifferingCar[];
  /** Loose parts of which the file holds something else: the ones here stay. */
  readonly left: readonly string[];
  /** Parts that joined under another name, as one here that is another part has theirs. */
  readonly renamed: readonly Renamed[];
  /** Parts of cars that joined which are in a car here too: one part, one history. */
  readonly shared: readonly string[];
}
type Choose = (car: DifferingCar) => CarChoice;
/** One car that was changed stays as it is here; two that share a name are both kept. */
export const usualChoice: Choose = ({ same }) => (same ? 'mine' : 'both');

/** As it goes into a file: what was taken away stays here. */
export function forFile({ removed: _stays, ...shelf }: ShelfContent): ShelfContent {
  return shelf;
}
/** Nobody has changed anything on it yet. */
export const isExample = (here: ShelfContent, example: Car): boolean =>
  here.cars.length === 1 && here.loose.length === 0 && text(here.cars[0]) === text(example);

/** `example` gives way where it is all there is and nobody has changed it: the file's shelf takes its place. */
export function arrivingShelf(
  here: ShelfContent,
  file: ShelfContent,
  example: Car,
  choose: Choose = usualChoice,
): ShelfMerge {
  if (!isExample(here, example)) return mergedShelf(here, file, choose);
  const shelf = { ...forFile(file), ...(here.removed && { removed: here.removed }) };
  const [mine] = here.cars;
  const fresh = file.cars.filter((car) => !isSameCar(mine, car) || text(mine) !== text(car));
  const added = [...fresh.map(({ name }) => name), ...file.loose.map(looseName)];
  return { shelf, added, differing: [], left: [], renamed: [], shared: [] };
}
export function mergedShelf(
  here: ShelfContent,
  file: ShelfContent,
  choose: Choose = usualChoice,
): ShelfMerge {
  const start = { shelf: here, added: [], differing: [], left: [], renamed: [], shared: [] };
  const cars = file.cars.reduce<ShelfMerge>((merge, theirs) => withCarOf(merge, theirs, here, choose), start);
  const all = file.loose.reduce<ShelfMerge>((merge, item) => withLooseOf(merge, item), cars);
  return { ...all, shelf: shelfSchema.parse(all.shelf) };
}
function withCarOf(merge: ShelfMerge, theirs: Car, here: ShelfContent, choose: Choose): ShelfMerge {
  const mine =
    here.cars.find((car) => isSameCar(car, theirs)) ?? here.cars.find(({ name }) => name === theirs.name);
  if (!mine) return joined(merge, theirs);
  const same = isOneCar(mine, theirs);
  if (same && text(mine) === text(theirs)) return merge;
  const differing = { mine, theirs, same };
  const told = { ...merge, differing: [...merge.differing, differing] };
  const choice = choose(differing);
  if (choice === 'mine') return told;
  return choice === 'theirs'
    ? replaced(told, differing)
    : joined(told, differing.same ? copyOf(theirs) : theirs);
}
/** Also two that are made of the same parts, whatever each bench took them for. */
const isOneCar = (mine: Car, theirs: Car): boolean =>
  isSameCar(mine, theirs) ||
  fittedParts(theirs).every((part) => fittedParts(mine).some((each) => isSamePart(each, part)));
/** A second description of one car: parts keep their identities, the car has none of its own yet. */
function copyOf({ id: _same, unentered: _own, ...car }: Car): Car {
  return car;
}
function joined(merge: ShelfMerge, theirs: Car): ShelfMerge {
  const { shelf } = merge;
  const taken = new Set(shelf.cars.map(({ name }) => name));
  const { car, renamed } = withOwnNames(shelf, { ...theirs, name: freeNameAmong(taken, theirs.name) });
  const shared = fittedParts(car).filter((part) => allParts(shelf).some((each) => isSamePart(each, part)));
  return {
    ...merge,
    shelf: addCar(shelf, car),
    added: [...merge.added, car.name],
    renamed: [...merge.renamed, ...renamed],
    shared: [...merge.shared, ...shared.map(({ name }) => name)],
  };
}
/** The one here can be put back. */
function replaced(merge: ShelfMerge, { mine, theirs, same }: DifferingCar): ShelfMerge {
  const { shelf } = merge;
  const others = { ...shelf, cars: shelf.cars.filter((car) => car !== mine) };
  const taken = new Set(others.cars.map(({ name }) => name));
  const named = {
    ...theirs,
    ...(same && mine.id && { id: mine.id }),
    name: freeNameAmong(taken, theirs.name),
  };
  const { car, renamed } = withOwnNames(others, named);
  return {
    ...merge,
    shelf: {
      ...shelf,
      cars: shelf.cars.map((each) => (each === mine ? car : each)),
      onBench: shelf.onBench === mine.name ? car.name : shelf.onBench,
      removed: [...(shelf.removed ?? []), mine],
    },
    added: [...merge.added, car.name],
    renamed: [...merge.renamed, ...renamed],
  };
}
type Loose = ShelfContent['loose'][number];
function withLooseOf(merge: ShelfMerge, item: Loose): ShelfMerge {
  const { shelf } = merge;
  const known = allParts(shelf).find((part) => isSamePart(part, item.part));
  if (known)
    return text(known) === text(item.part) ? merge : { ...merge, left: [...merge.left, looseName(item)] };
  const { part, renamed } = ownName(shelf, item.part);
  return {
    ...merge,
    shelf: { ...shelf, loose: [...shelf.loose, { ...item, part }] },
    added: [...merge.added, looseName({ part })],
    renamed: [...merge.renamed, ...renamed],
  };
}
const isSamePart = (a: Part, b: Part): boolean =>
  a.kind === b.kind && isOfPart({ partName: a.name, partId: a.id }, { partName: b.name, partId: b.id });

/** A name that no other part of its kind has here. */
function ownName(shelf: ShelfContent, part: Part): { part: Part; renamed: Renamed[] } {
  const others = allParts(shelf).filter((each) => each.kind === part.kind && !isSamePart(each, part));
  const to = freeNameAmong(new Set(others.map(({ name }) => name)), part.name);
  const renamed = to === part.name ? [] : [{ kind: part.kind, from: part.name, to }];
  return { part: { ...part, name: to }, renamed };
}
function withOwnNames(shelf: ShelfContent, car: Car): { car: Car; renamed: Renamed[] } {
  const named = fittedParts(car).map((part) => ownName(shelf, part));
  const parts = Object.fromEntries(named.map(({ part }) => [part.kind, part]));
  const baselines = car.baselines?.map((each) => {
    const kind = partKinds.find((kind) => car[kind] && isOfPart(each, partRefOf(car, kind)));
    return { ...each, partName: kind ? (parts[kind] as Part).name : each.partName };
  });
  return {
    car: { ...car, ...parts, ...(baselines && { baselines }) },
    renamed: named.flatMap(({ renamed }) => renamed),
  };
}
const fittedParts = (car: Car): Part[] => partKinds.flatMap((kind) => car[kind] ?? []);
const looseName = ({ part }: Pick<Loose, 'part'>) => `${part.kind} ${part.name}`;
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
