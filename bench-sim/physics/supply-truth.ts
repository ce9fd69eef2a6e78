// SPDX-License-Identifier: MIT
// The true values of the supply's results: pack at rest, charge, resistances, rail, ripple. Definitions stand in
// README.md beside this file.
import type { Pack } from './pack.ts';
import type { CarParameters } from './parameters.ts';
import { shareOfPack } from './pwm-ripple.ts';
import { railV, standbyA } from './steady-state.ts';

interface Supply {
  readonly car: CarParameters;
  readonly pack: Pack;
}
export function supplyTruth(plant: Supply): Record<string, number> {
  return { ...atRest(plant), ...atFirstPower(plant), ...ofRail(plant), ...ofSag(plant), ...ofRipple(plant) };
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
/** Mean of a race where nobody entered one. */
const raceA = 40;
/** What a regulator needs above its output at the servo's work, some 3 A. */
const workA = 3;
function ofRail({ car, pack }: Supply): Record<string, number> {
  const { rail, line } = car;
  const sourceOhm = car.pack.seriesOhm + line.leadOhm;
  const restV = railV(car, 0);
  const leftV = pack.openV - raceA * sourceOhm - workA * rail.dropOutOhm;
  return { 'rail-setting': restV, 'rail-in-race': Math.min(restV, leftV) };
}
/** Middle of what the check keeps of a second of load. */
const readAfterS = 0.81;
function ofSag({ car }: Supply): Record<string, number> {
  const { seriesOhm, polarisationOhm, polarisationS, lowerShare } = car.pack;
  const cellsOhm = seriesOhm + polarisationOhm * (1 - Math.exp(-readAfterS / polarisationS));
  const packOhm = cellsOhm + car.line.leadOhm;
  return {
    'pack-resistance': packOhm,
    'dc-resistance': packOhm,
    'lower-cell-resistance': cellsOhm * lowerShare,
    'upper-cell-resistance': packOhm - cellsOhm * lowerShare,
    'race-sag': raceA * packOhm,
  };
}
/** One pole, as the rail tap declares it: ripple is told in that bandwidth. */
const railBandHz = 3400;
function ofRipple({ car }: Supply): Record<string, number> {
  const { ringV, ringHz } = car.rail;
  const amplitudeV = ringV / Math.hypot(1, ringHz / railBandHz);
  return {
    'rail-ripple-pp': 2 * amplitudeV,
    'rail-ripple-rms': amplitudeV * Math.SQRT1_2,
    'ripple-share': 100 * shareOfPack(car),
  };
}
