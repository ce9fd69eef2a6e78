// SPDX-License-Identifier: MIT
// Gives cars and parts an identity where they have none, and what is from before there were any the identity of the
// part that had its name. Where more than one part fits, nothing is guessed. Pure: new identities are handed in.
import { isSameCar, type CarRef, type PartRef } from './identity.ts';
import { partKinds, partRefOf, type Car, type PartKind } from './part.ts';
import type { ShelfContent } from './shelf.ts';

/** A new identity for a car, or for its part of a kind. */
export type NewId = (what: 'car' | PartKind) => string;

/** A part that somebody enters now was the car's own before: it keeps that identity. */
export function identifiedCar(car: Car, newId: NewId): Car {
  const unentered: Partial<Record<PartKind, string>> = { ...car.unentered };
  const entered = partKinds.flatMap((kind) => {
    const part = car[kind];
    if (!part) unentered[kind] ??= newId(kind);
    if (!part || part.id !== undefined) return [];
    const id = unentered[kind] ?? newId(kind);
    delete unentered[kind];
    return [[kind, { ...part, id }]];
  });
  const named = { ...car, ...Object.fromEntries(entered), unentered, id: car.id ?? newId('car') } as Car;
  return { ...named, ...(car.baselines && { baselines: baselinesOf(named) }) };
}
function baselinesOf(car: Car): Car['baselines'] {
  const refs = partKinds.map((kind) => partRefOf(car, kind));
  return car.baselines?.map((each) => withPartId(each, refs));
}
type Loose = ShelfContent['loose'][number];
function identifiedLoose({ part, baselines }: Loose, newId: NewId): Loose {
  const named = { ...part, id: part.id ?? newId(part.kind) };
  const refs = [{ partName: named.name, partId: named.id }];
  return { part: named, ...(baselines && { baselines: baselines.map((each) => withPartId(each, refs)) }) };
}
export function identified(shelf: ShelfContent, newId: NewId): ShelfContent {
  const { cars, loose, removed } = shelf;
  const any = (item: Car | Loose) =>
    'part' in item ? identifiedLoose(item, newId) : identifiedCar(item, newId);
  return {
    ...shelf,
    cars: cars.map((car) => identifiedCar(car, newId)),
    loose: loose.map((item) => identifiedLoose(item, newId)),
    ...(removed && { removed: removed.map(any) }),
  };
}
/** The same with the identity of the one part of these that has its name. */
export function withPartId<T extends PartRef>(of: T, parts: readonly PartRef[]): T {
  if (of.partId !== undefined) return of;
  const ids = new Set(parts.filter(({ partName }) => partName === of.partName).map(({ partId }) => partId));
  const [partId] = ids;
  return ids.size === 1 && partId !== undefined ? { ...of, partId } : of;
}
export interface KnownPart extends PartRef {
  readonly kind: PartKind;
  /** Null for a part in no car. */
  readonly car: CarRef | null;
}
/** Also what was taken away, behind what is here; a car's own parts that nobody entered among them. */
export function knownParts({ cars, loose, removed = [] }: ShelfContent): KnownPart[] {
  const gone = removed.filter((item) => 'motor' in item);
  const fitted = [...cars, ...gone].flatMap((car) =>
    partKinds.map((kind) => ({ kind, car: { name: car.name, id: car.id }, ...partRefOf(car, kind) })),
  );
  const lying = [...loose, ...removed.filter((item) => 'part' in item)];
  return [
    ...fitted,
    ...lying.map(({ part }) => ({ kind: part.kind, car: null, partName: part.name, partId: part.id })),
  ];
}
export interface RunOf extends PartRef {
  readonly part: PartKind;
  readonly car: string;
  readonly carId?: string;
}
/** The run with the identities that its names stand for: the part of its car first, else the only one of its name; the
 *  very run where nothing is to be added. `bound`: it counts for the car of its name alone. */
export function identifiedRun<T extends RunOf>(run: T, parts: readonly KnownPart[], bound: boolean): T {
  if (run.partId !== undefined && run.carId !== undefined) return run;
  const alike = parts.filter(({ kind, partName }) => kind === run.part && partName === run.partName);
  const ofCar = parts.filter(({ car }) => car && isSameCar(car, { name: run.car, id: run.carId }));
  const inCar = alike.find((part) => ofCar.includes(part));
  const { partId } = run.partId === undefined && inCar ? inCar : withPartId(run, bound ? [] : alike);
  const carId = run.carId ?? ofCar[0]?.car?.id;
  if (partId === run.partId && carId === run.carId) return run;
  return { ...run, ...(partId !== undefined && { partId }), ...(carId !== undefined && { carId }) };
}
