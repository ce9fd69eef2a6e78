// SPDX-License-Identifier: MIT
// Parts of a file that are called as one here and are not known to be that one: two benches both have a "Motor". Whether
// they are the same part a person says; until then they are not merged. Pure.
import { isOfPart, type PartRef } from './identity.ts';
import type { Car, PartKind } from './part.ts';
import { partKinds } from './part.ts';
import type { Part, ShelfContent } from './shelf.ts';
import { identified, type KnownPart, type NewId } from './shelf-identity.ts';

export interface FilePart extends PartRef {
  readonly kind: PartKind;
}
export interface Alike {
  readonly key: string;
  readonly kind: PartKind;
  readonly name: string;
  /** Identity of the one here. */
  readonly mine: string;
  /** Missing in a file from before parts had identities. */
  readonly theirs?: string;
}
export type AlikeAnswer = 'same' | 'another';
/** A run of the file that is here already, of which part there and which here. */
export interface KnownRun {
  readonly theirs: FilePart;
  readonly mine?: string;
}
export function alikeParts(here: readonly KnownPart[], file: readonly FilePart[]): Alike[] {
  const alikes = file.flatMap(({ kind, partName, partId }) => {
    if (partId !== undefined && here.some((part) => part.partId === partId)) return [];
    const mine = here.find((part) => part.kind === kind && part.partName === partName)?.partId;
    if (mine === undefined) return [];
    const key = `${kind} ${partName} ${partId ?? ''}`.trim();
    return [{ key, kind, name: partName, mine, ...(partId !== undefined && { theirs: partId }) }];
  });
  return [...new Map(alikes.map((alike) => [alike.key, alike])).values()];
}
const isTheirs = (alike: Alike, { kind, partName, partId }: FilePart): boolean =>
  alike.kind === kind &&
  (alike.theirs === undefined ? partId === undefined && alike.name === partName : alike.theirs === partId);

/** The same where a run of it is here as one of mine; another where both have identities; else nobody knows: null. */
export function usualAnswer(alike: Alike, runs: readonly KnownRun[]): AlikeAnswer | null {
  if (runs.some(({ theirs, mine }) => isTheirs(alike, theirs) && mine === alike.mine)) return 'same';
  return alike.theirs === undefined ? null : 'another';
}
export type IdentityOf = (part: FilePart) => string | undefined;
/** The identity that a part of the file has here by the answers; what nobody knows counts as another part. */
export function identitiesBy(
  alikes: readonly Alike[],
  answers: Readonly<Record<string, AlikeAnswer | null>>,
  fresh: (key: string) => string,
): IdentityOf {
  return (part) => {
    const alike = alikes.find((each) => isTheirs(each, part));
    if (!alike) return part.partId;
    return answers[alike.key] === 'same' ? alike.mine : (part.partId ?? fresh(alike.key));
  };
}
/** The file's shelf with the identities that its parts have here; what has none gets one. A car without one is the one
 *  of its name that has one of its parts. */
export function identifiedFile(
  file: ShelfContent,
  here: ShelfContent,
  identityOf: IdentityOf,
  newId: NewId,
): ShelfContent {
  const part = <T extends Part>(each: T): T => {
    const id = identityOf({ kind: each.kind, partName: each.name, partId: each.id });
    return id === undefined ? each : { ...each, id };
  };
  const known = { ...file, cars: file.cars.map((car) => carWith(car, part, here)) };
  return identified({ ...known, loose: file.loose.map((item) => looseWith(item, part)) }, newId);
}
type Baselines = Car['baselines'];
const moved = (baselines: Baselines, from: PartRef, to: string | undefined): Baselines =>
  baselines?.map((each) => (to !== undefined && isOfPart(each, from) ? { ...each, partId: to } : each));

function looseWith(item: ShelfContent['loose'][number], part: <T extends Part>(each: T) => T) {
  const named = part(item.part);
  const from = { partName: item.part.name, partId: item.part.id };
  return {
    ...item,
    part: named,
    ...(item.baselines && { baselines: moved(item.baselines, from, named.id) }),
  };
}
function carWith(car: Car, part: <T extends Part>(each: T) => T, here: ShelfContent): Car {
  const known = partsWith(car, part);
  const ids = new Set(partKinds.flatMap((kind) => known[kind]?.id ?? []));
  const holds = (mine: Car) => partKinds.some((kind) => ids.has(mine[kind]?.id ?? ''));
  const id = car.id ?? here.cars.find((mine) => mine.name === car.name && holds(mine))?.id;
  return { ...known, ...(id !== undefined && { id }) };
}
function partsWith(car: Car, part: <T extends Part>(each: T) => T): Car {
  return partKinds.reduce<Car>((known, kind) => {
    const each = car[kind];
    if (!each) return known;
    const named = part(each as Part);
    const baselines = moved(known.baselines, { partName: each.name, partId: each.id }, named.id);
    return { ...known, [kind]: named, ...(baselines && { baselines }) } as Car;
  }, car);
}
