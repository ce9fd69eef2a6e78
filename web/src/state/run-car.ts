// SPDX-License-Identifier: MIT
// Where the car of a kept run is now: on the bench, elsewhere on the shelf under whatever name, or gone. Pure.
import { isSameCar } from '#core/parts/identity';
import type { ShelfContent } from '#core/parts/shelf';
import type { RunSummary } from './run-summary.ts';

export interface RunCar {
  readonly where: 'bench' | 'shelf' | 'gone';
  /** As it is called now. */
  readonly name: string;
}
export function runCar({ car, carId }: Pick<RunSummary, 'car' | 'carId'>, shelf: ShelfContent): RunCar {
  const found = shelf.cars.find((each) => isSameCar(each, { name: car, id: carId }));
  if (!found) return { where: 'gone', name: car };
  return { where: found.name === shelf.onBench ? 'bench' : 'shelf', name: found.name };
}
/** "Grey Marmot", or "Grey Marmot, now Marmot of the crew". */
export const runCarWords = (then: string, { name }: RunCar): string =>
  name === then ? then : `${then}, now ${name}`;
