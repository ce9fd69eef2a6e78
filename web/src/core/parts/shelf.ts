// SPDX-License-Identifier: MIT
// The shelf: all cars, the one on the bench, and parts that are in no car. A part's history goes by its name, so no
// two parts of a kind may share one; its baselines go with it. Pure: every act gives a new shelf or throws words.
import { z } from 'zod';
import {
  carSchema,
  controllerSchema,
  driveSchema,
  leadsSchema,
  motorSchema,
  packSchema,
  partKinds,
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
  })
  .refine(
    ({ cars, onBench }) => cars.some(({ name }) => name === onBench),
    'the car on the bench is not on the shelf',
  )
  .refine(({ cars }) => new Set(cars.map(({ name }) => name)).size === cars.length, 'two cars have one name');
export type ShelfContent = z.infer<typeof shelfSchema>;

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
export function addCar(shelf: ShelfContent, car: Car): ShelfContent {
  if (shelf.cars.some(({ name }) => name === car.name))
    refuse(`There is a car "${car.name}" already. Give this one another name.`);
  return { ...shelf, cars: [...shelf.cars, car] };
}
/** A second car with the same kinds of parts under names of their own, and no history. */
export function addLike(shelf: ShelfContent, name: string, newName: string): ShelfContent {
  const { baselines: _left, ...model } = structuredClone(carNamed(shelf, name));
  const parts = partKinds.flatMap((kind) => {
    const part = model[kind];
    return part ? [[kind, { ...part, name: freeName(shelf, part.name) }]] : [];
  });
  return addCar(shelf, carSchema.parse({ ...model, name: newName, ...Object.fromEntries(parts) }));
}
/** The last car stays. */
export function removeCar(shelf: ShelfContent, name: string): ShelfContent {
  carNamed(shelf, name);
  const cars = shelf.cars.filter((car) => car.name !== name);
  if (cars.length === 0) refuse('This is the last car: change it instead of taking it away.');
  return { ...shelf, cars, onBench: shelf.onBench === name ? cars[0].name : shelf.onBench };
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
export function shelvePart(shelf: ShelfContent, part: Part): ShelfContent {
  if (allParts(shelf).some(({ kind, name }) => kind === part.kind && name === part.name))
    refuse(
      `There is a ${part.kind} "${part.name}" already: its history goes by its name. Give this one another.`,
    );
  return { ...shelf, loose: [...shelf.loose, { part }] };
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
export function discardPart(shelf: ShelfContent, kind: PartKind, name: string): ShelfContent {
  return { ...shelf, loose: shelf.loose.filter(({ part }) => part.kind !== kind || part.name !== name) };
}
export function allParts({ cars, loose }: ShelfContent): readonly Part[] {
  const fittedParts = cars.flatMap((car) => partKinds.flatMap((kind) => car[kind] ?? []));
  return [...fittedParts, ...loose.map(({ part }) => part)] as Part[];
}
type Baselines = Car['baselines'];
function baselinesOf(car: Car, kind: PartKind): Baselines {
  return car.baselines?.filter(({ partName }) => partName === car[kind]?.name);
}
function fitted(car: Car, kind: PartKind, part: Part | undefined, own: Baselines = []): Car {
  const others = car.baselines?.filter(({ partName }) => partName !== car[kind]?.name) ?? [];
  const { [kind]: _out, ...rest } = car;
  return { ...rest, ...(part && { [kind]: part }), baselines: [...others, ...own] } as Car;
}
/** "Motor" becomes "Motor 2", "Motor 2" becomes "Motor 3". */
function freeName(shelf: ShelfContent, name: string): string {
  const taken = new Set(allParts(shelf).map((part) => part.name));
  const stem = name.replace(/ \d+$/, '');
  for (let number = 2; ; number++) if (!taken.has(`${stem} ${number}`)) return `${stem} ${number}`;
}
