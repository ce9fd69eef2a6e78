// SPDX-License-Identifier: MIT
// The car of a kept run is found again on the bench, on the shelf, under another name, and is gone when it is.
import { describe, expect, it } from 'vitest';
import { marmotCar } from '#core/parts/marmot-fixture';
import { addCar, newShelf } from '#core/parts/shelf';
import { runCar, runCarWords } from './run-car.ts';

const shelf = addCar(newShelf({ ...marmotCar, id: 'm' }), { ...marmotCar, name: 'Vole', id: 'v' });

describe('the car of a run', () => {
  it.each([
    ['on the bench', { car: 'Marmot', carId: 'm' }, 'bench', 'Marmot'],
    ['elsewhere on the shelf', { car: 'Vole', carId: 'v' }, 'shelf', 'Vole'],
    ['from before there were identities', { car: 'Vole' }, 'shelf', 'Vole'],
    ['renamed since', { car: 'Hare', carId: 'v' }, 'shelf', 'Hare, now Vole'],
    ['another one that has its name now', { car: 'Vole', carId: 'x' }, 'gone', 'Vole'],
  ] as const)('%s', (_what, run, where, words) => {
    const found = runCar(run, shelf);
    expect([found.where, runCarWords(run.car, found)]).toEqual([where, words]);
  });
});
