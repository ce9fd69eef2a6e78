// SPDX-License-Identifier: MIT
// What can be added to the shelf: cars and parts of a class, and a second car like the one on the bench. Pure.
import type { Car } from '#core/parts/part';
import {
  carClassTitles,
  partClasses,
  typicalCar,
  typicalPart,
  type CarClassId,
  type PartClassId,
} from '#core/parts/part-classes';
import * as shelves from '#core/parts/shelf';

/** The crew's made-up cars: invented, like the scenario. */
const crewNames = ['Quarry Vole', 'Lantern Moth', 'Marsh Hare', 'Night Heron'];
const like = 'like';

export function newcomers(car: Car) {
  const parts = Object.entries(partClasses).map(([id, { title }]) => [id, title] as const);
  return [
    { title: 'Cars', entries: [...carClassTitles, [like, `A car like ${car.name}`] as const] },
    { title: 'Parts', entries: parts },
  ];
}
const isCar = (id: string): id is CarClassId => carClassTitles.some(([each]) => each === id);

/** The name it gets where none is typed. */
export function suggestedName(shelf: shelves.ShelfContent, id: string): string {
  if (id === like || isCar(id)) {
    const taken = new Set(shelf.cars.map(({ name }) => name));
    return crewNames.find((name) => !taken.has(name)) ?? `Car ${taken.size + 1}`;
  }
  return shelves.freePartName(shelf, typicalPart(id as PartClassId));
}
/** Throws ShelfRefused where the name is taken or too long. A car joins behind the others; the bench stays as it is. */
export function newcomer(shelf: shelves.ShelfContent, id: string, typed: string): shelves.ShelfContent {
  const name = typed.trim() || suggestedName(shelf, id);
  if (id === like) return shelves.addLike(shelf, shelf.onBench, name);
  if (isCar(id)) return shelves.addCar(shelf, shelves.withFreeNames(shelf, typicalCar(id, name)));
  return shelves.shelvePart(shelf, typicalPart(id as PartClassId, name));
}
