// SPDX-License-Identifier: MIT
// The true values of the supply's results: pack at rest, charge, resistances, rail, ripple. Definitions stand in
// README.md beside this file.
import type { Pack } from './pack.ts';
import type { CarParameters } from './parameters.ts';
import { standbyA } from './steady-state.ts';

interface Supply {
  readonly car: CarParameters;
  readonly pack: Pack;
}
export function supplyTruth(plant: Supply): Record<string, number> {
  return { ...atRest(plant), ...atFirstPower(plant) };
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
/** The limited feed settles where its diode and what leaks leave it; a rail of standby draws by its power. */
function atFirstPower({ car, pack }: Supply): Record<string, number> {
  const { line, rail, controller } = car;
  if (car.pack.reversed) return { 'feed-polarity': -pack.openV };
  const settledV = pack.openV - line.limiterDiodeV - line.limiterOhm * line.leakA;
  const railA = (rail.settingV * standbyA(rail, rail.settingV)) / (rail.efficiency * pack.openV);
  return {
    'feed-polarity': pack.openV,
    'charge-reached': (100 * settledV) / (pack.openV - line.leakA * car.pack.seriesOhm),
    capacitance: line.capacitanceF,
    'leak-current': line.leakA,
    'standby-current': controller.idleA + railA + line.leakA,
  };
}
