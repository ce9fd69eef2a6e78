// SPDX-License-Identifier: MIT
// The car that the virtual rig drew joins the shelf: the example gives way to it, and so does the one drawn before
// while nobody has changed it. Pure.
import { withoutIdentity } from '#core/parts/identity';
import type { Car } from '#core/parts/part';
import { addCar, changeCar, putOnBench, removeCar, type ShelfContent } from '#core/parts/shelf';
import { identifiedCar, knownParts } from '#core/parts/shelf-identity';

export interface Drawing {
  readonly car: Car;
  /** With the limits a person gave a car of that name. */
  readonly own: Car;
  readonly before: Car | null;
  readonly example: Car;
}
/** The very shelf where the same car was drawn again and is still there: who changed it keeps the change. */
export function withDrawn(shelf: ShelfContent, { car, own, before, example }: Drawing): ShelfContent {
  const known = shelf.cars.some(({ name }) => name === car.name);
  if (known && sameCar(before, car)) return shelf;
  const drawn = withDrawnIdentity(shelf, own);
  const joined = known ? changeCar(shelf, car.name, drawn) : addCar(shelf, drawn);
  const onBench = putOnBench(joined, car.name);
  const leaving = onBench.cars.filter(
    (each) => each.name !== car.name && (isBare(each, before) || sameCar(each, example)),
  );
  return leaving.reduce((left, { name }) => gone(left, name), onBench);
}
const gone = (shelf: ShelfContent, name: string): ShelfContent => ({
  ...removeCar(shelf, name),
  removed: shelf.removed,
});
const drawnIdentity = (car: Car): Car => identifiedCar(car, (what) => `drawn: ${car.name}, ${what}`);
/** The shelf with that identity for the car drawn last, where it is from before cars had any. */
export const withLastDrawn = (shelf: ShelfContent, last: Car | null): ShelfContent => ({
  ...shelf,
  cars: shelf.cars.map((car) => (car.id === undefined && car.name === last?.name ? drawnIdentity(car) : car)),
});
/** The car of a seed is the same one each time it is drawn, unless one that has its identity goes by another name now. */
function withDrawnIdentity(shelf: ShelfContent, own: Car): Car {
  const drawn = drawnIdentity(own);
  const elsewhere = knownParts({ ...shelf, removed: [] }).some(
    ({ partId, car }) => car?.name !== own.name && partId !== undefined && partId === drawn.motor.id,
  );
  return elsewhere ? withoutIdentity(drawn) : drawn;
}
const entered = (car: Car | null): string => JSON.stringify(withoutIdentity(car));
const sameCar = (a: Car | null, b: Car): boolean => entered(a) === entered(b);
/** Own limits come back by the car's name. */
function isBare({ overrides: _own, baselines: _runs, ...rest }: Car, drawn: Car | null): boolean {
  if (!drawn) return false;
  const { overrides: _drawnOwn, baselines: _drawnRuns, ...bare } = drawn;
  return JSON.stringify(withoutIdentity(rest)) === JSON.stringify(withoutIdentity(bare));
}
