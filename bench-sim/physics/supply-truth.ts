// SPDX-License-Identifier: MIT
// The true values of the supply's results: pack at rest, charge, resistances, rail, ripple. Definitions stand in
// README.md beside this file.
import type { Pack } from './pack.ts';
import type { CarParameters } from './parameters.ts';

interface Supply {
  readonly car: CarParameters;
  readonly pack: Pack;
}
export function supplyTruth(plant: Supply): Record<string, number> {
  return { ...atRest(plant) };
}
/** Of a changed-over pack the rig's front shows the sign and nothing else. */
function atRest({ car, pack }: Supply): Record<string, number> {
  if (car.pack.reversed) return { 'pack-polarity': -pack.openV };
  const upperV = pack.openV - pack.lowerOpenV;
  return {
    'pack-polarity': pack.openV,
    'pack-voltage': pack.openV,
    'lower-cell': pack.lowerOpenV,
    'upper-cell': upperV,
    'cell-imbalance': Math.abs(upperV - pack.lowerOpenV),
  };
}
