// SPDX-License-Identifier: MIT
// The shelf: all cars, the one on the bench, and parts that are in no car. No two parts of a kind may share a name, as
// nobody could tell them apart; baselines go with their part. Pure: every act gives a new shelf or throws words.
import { z } from 'zod';
import { isOfPart, withoutIdentity } from './identity.ts';
import {
  carSchema,
  controllerSchema,
  driveSchema,
  leadsSchema,
  motorSchema,
  packSchema,
  partKinds,
  partRefOf,
  radioSchema,
  servoSchema,
  type Car,
  type PartKind,
} from './part.ts';

export const partSchema = z.union([
  motorSchema,
  servoSchema,
  controllerSchema,
  packSchema,
  radioSchema,
  leadsSchema,
  driveSchema,
]);
export type Part = z.infer<typeof partSchema>;
const baselines = carSchema.shape.baselines;
/** A part in no car, with what its own runs have set. */
const looseSchema = z.object({ part: partSchema, baselines });
export const shelfSchema = z
  .object({
    version: z.literal(1, { error: 'this shelf is of another version of the program' }),
    cars: z.array(carSchema).min(1, 'a shelf holds at least one car'),
    /** Name of the car on the bench. */
    onBench: z.string(),
    loose: z.array(looseSchema),
    /** What was taken away and can be put back, newest last. */
    removed: z.array(z.union([carSchema, looseSchema])).optional(),
  })
  .refine(
    ({ cars, onBench }) => cars.some(({ name }) => name === onBench),
    'the car on the bench is not on the shelf',
  )
  .refine(({ cars }) => new Set(cars.map(({ name }) => name)).size === cars.length, 'two cars have one name');
export type ShelfContent = z.infer<typeof shelfSchema>;
type Loose = z.infer<typeof looseSchema>;

/** What can't be done, in words for the person. */
export class ShelfRefused extends Error {
  override readonly name = 'ShelfRefused';
}
export const newShelf = (car: Car): ShelfContent => ({
  version: 1,
  cars: [car],
  onBench: car.name,
  loose: [],
});
export function carOnBench({ cars, onBench }: ShelfContent): Car {
  return cars.find(({ name }) => name === onBench)!;
}
const refuse = (words: string): never => {
  throw new ShelfRefused(words);
};
function carNamed({ cars }: ShelfContent, name: string): Car {
  return cars.find((car) => car.name === name) ?? refuse(`There is no car "${name}" on the shelf.`);
}
const withCar = (shelf: ShelfContent, name: string, car: Car): ShelfContent => ({
  ...shelf,
  cars: shelf.cars.map((each) => (each.name === name ? car : each)),
  onBench: shelf.onBench === name ? car.name : shelf.onBench,
});
export function putOnBench(shelf: ShelfContent, name: string): ShelfContent {
  return { ...shelf, onBench: carNamed(shelf, name).name };
}
/** The car takes the place of the one of that name. Throws when its new name is another car's. */
export function changeCar(shelf: ShelfContent, name: string, car: Car): ShelfContent {
  if (car.name !== name && shelf.cars.some((each) => each.name === car.name))
    refuse(`There is a car "${car.name}" already. Give this one another name.`);
  return withCar(shelf, name, car);
}
/** Throws when there is a car of that name. */
export function addCar(shelf: ShelfContent, car: Car): ShelfContent {
  if (shelf.cars.some(({ name }) => name === car.name))
    refuse(`There is a car "${car.name}" already. Give this one another name.`);
  return { ...shelf, cars: [...shelf.cars, car] };
}
/** A second car with the same kinds of parts under names of their own, and no history. */
export function addLike(shelf: ShelfContent, name: string, newName: string): ShelfContent {
  const { baselines: _left, ...model } = withoutIdentity(carNamed(shelf, name));
  const { setUp: _dated, ...parts } = withFreeNames(shelf, model);
  return addCar(shelf, carSchema.parse({ ...parts, name: newName }));
}
/** The car with names for its parts that no other part on the shelf has. */
export function withFreeNames(shelf: ShelfContent, car: Car): Car {
  const taken = allParts(shelf);
  const parts = partKinds.flatMap((kind) => {
    const part = car[kind];
    return part ? [[kind, { ...part, name: freeName(taken, part) }]] : [];
  });
  return { ...car, ...Object.fromEntries(parts) } as Car;
}
/** The last car stays. What goes can be put back. */
export function removeCar(shelf: ShelfContent, name: string): ShelfContent {
  carNamed(shelf, name);
  const cars = shelf.cars.filter((car) => car.name !== name);
  if (cars.length === 0) refuse('This is the last car: change it instead of taking it away.');
  const removed = [...(shelf.removed ?? []), carNamed(shelf, name)];
  return { ...shelf, cars, removed, onBench: shelf.onBench === name ? cars[0].name : shelf.onBench };
}
export type Removed = NonNullable<ShelfContent['removed']>[number];
/** A car or a loose part that was taken away comes back, beside what has its name by now. */
export function putBack(shelf: ShelfContent, item: Removed): ShelfContent {
  const rest = { ...shelf, removed: shelf.removed?.filter((each) => each !== item) };
  if ('part' in item) return shelvePart(rest, item.part, item.baselines);
  return addCar(rest, {
    ...item,
    name: freeNameAmong(new Set(rest.cars.map(({ name }) => name)), item.name),
  });
}
/** The part goes into the other car; what was there goes the other way, its own baselines with each. */
export function swapParts(shelf: ShelfContent, kind: PartKind, from: string, to: string): ShelfContent {
  if (from === to) refuse('The part is in that car already.');
  const [a, b] = [carNamed(shelf, from), carNamed(shelf, to)];
  if (!a[kind]) refuse(`"${from}" has no such part to give.`);
  if (!b[kind] && needed(kind)) refuse(`"${to}" has no such part to give back, and no car goes without one.`);
  const swapped = withCar(shelf, from, fitted(a, kind, b[kind], baselinesOf(b, kind)));
  return withCar(swapped, to, fitted(b, kind, a[kind], baselinesOf(a, kind)));
}
const needed = (kind: PartKind): boolean => !carSchema.shape[kind].isOptional();

/** A part of its own beside the cars. */
export function shelvePart(shelf: ShelfContent, part: Part, own?: Baselines): ShelfContent {
  if (allParts(shelf).some(({ kind, name }) => kind === part.kind && name === part.name))
    refuse(
      `There is a ${part.kind} "${part.name}" already: nobody could tell them apart. Give this one another name.`,
    );
  return { ...shelf, loose: [...shelf.loose, { part, ...(own && { baselines: own }) }] };
}
/** Fits a loose part; the one that was in the car is loose afterwards. */
export function fitPart(shelf: ShelfContent, car: string, kind: PartKind, name: string): ShelfContent {
  const found = shelf.loose.find(({ part }) => part.kind === kind && part.name === name);
  if (!found) return refuse(`There is no loose ${kind} "${name}" on the shelf.`);
  const into = carNamed(shelf, car);
  const out = into[kind];
  const rest = shelf.loose.filter((each) => each !== found);
  const loose = out ? [...rest, { part: out, baselines: baselinesOf(into, kind) }] : rest;
  return withCar({ ...shelf, loose }, car, fitted(into, kind, found.part, found.baselines));
}
/** A part that a car can do without comes out and lies loose. */
export function takeOut(shelf: ShelfContent, car: string, kind: PartKind): ShelfContent {
  const from = carNamed(shelf, car);
  const part = from[kind] ?? refuse(`"${car}" has no such part to take out.`);
  if (needed(kind)) refuse(`No car goes without a ${kind}: fit another one instead.`);
  const loose = [...shelf.loose, { part, baselines: baselinesOf(from, kind) }];
  return withCar({ ...shelf, loose }, car, fitted(from, kind, undefined));
}
/** A loose part goes; it can be put back. */
export function discardPart(shelf: ShelfContent, kind: PartKind, name: string): ShelfContent {
  const goes = ({ part }: Loose) => part.kind === kind && part.name === name;
  const removed = [...(shelf.removed ?? []), ...shelf.loose.filter(goes)];
  return { ...shelf, removed, loose: shelf.loose.filter((each) => !goes(each)) };
}
/** Words where another part of the kind has this name too, or null. */
export function sharedName(shelf: ShelfContent, kind: PartKind, name: string): string | null {
  const alike = allParts(shelf).filter((part) => part.kind === kind && part.name === name);
  return alike.length > 1
    ? `there is another ${kind} "${name}" on the shelf, and nobody could tell them apart: give this one another name`
    : null;
}
export function allParts({ cars, loose }: ShelfContent): readonly Part[] {
  const fittedParts = cars.flatMap((car) => partKinds.flatMap((kind) => car[kind] ?? []));
  return [...fittedParts, ...loose.map(({ part }) => part)] as Part[];
}
type Baselines = Car['baselines'];
const ofFitted = (car: Car, kind: PartKind) => (each: NonNullable<Baselines>[number]) =>
  car[kind] !== undefined && isOfPart(each, partRefOf(car, kind));
function baselinesOf(car: Car, kind: PartKind): Baselines {
  return car.baselines?.filter(ofFitted(car, kind));
}
function fitted(car: Car, kind: PartKind, part: Part | undefined, own: Baselines = []): Car {
  const goes = ofFitted(car, kind);
  const others = car.baselines?.filter((each) => !goes(each)) ?? [];
  const { [kind]: _out, ...rest } = car;
  return { ...rest, ...(part && { [kind]: part }), baselines: [...others, ...own] } as Car;
}
/** "Motor" becomes "Motor 2", "Motor 2" becomes "Motor 3", where the name is taken by a part of its kind. */
function freeName(parts: readonly Part[], { kind, name }: Part): string {
  const taken = new Set(parts.filter((part) => part.kind === kind).map((part) => part.name));
  return freeNameAmong(taken, name);
}
export const freePartName = (shelf: ShelfContent, part: Part): string => freeName(allParts(shelf), part);
/** The name, or the next of its numbers that is free. */
export function freeNameAmong(taken: ReadonlySet<string>, name: string): string {
  if (!taken.has(name)) return name;
  const stem = name.replace(/ \d+$/, '');
  for (let number = 2; ; number++) if (!taken.has(`${stem} ${number}`)) return `${stem} ${number}`;
}
