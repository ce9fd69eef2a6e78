// SPDX-License-Identifier: MIT
// Gearing of one car as a sheet: what each pinion gives in ratio, roll-out, motor and car speed, from measured or
// assumed figures, each with its half-width and where it comes from. It knows no screen.
import type { Drive } from '../parts/part.ts';
import { halfWidth } from '../measurements/coverage-interval.ts';
import { budgetOf, uncertain, type Quantity } from '../measurements/quantity.ts';
import { carSpeed, finalDriveRatio, motorSpeed, rollOutM, type Pull } from './gearing.ts';

/** A figure with its 95 % half-width and where it is from: "measured 2026-11-27", "assumed". */
export interface Figure {
  readonly value: number;
  readonly halfWidth: number;
  readonly origin: string;
}
export interface PullFigures {
  readonly kvRpmPerV: Figure;
  readonly packV: Figure;
  readonly seriesOhm: Figure;
  readonly currentA: Figure;
  readonly tyreM: Figure;
}
export interface GearRow {
  readonly pinionTeeth: number;
  readonly ratio: number;
  readonly rollOutM: number;
  readonly motorRpm: Figure;
  readonly carMPerS: Figure;
}
/** One row a pinion. */
export function gearSheet(
  drive: Drive,
  pinions: readonly number[],
  figures: PullFigures,
): readonly GearRow[] {
  const tyre = asQuantity('tyre', 'diameter of the tyre', figures.tyreM);
  const pull: Pull = {
    kvRpmPerV: asQuantity('kv', 'kV of the motor', figures.kvRpmPerV),
    packV: asQuantity('pack', 'pack at rest', figures.packV),
    seriesOhm: asQuantity('ohm', 'resistance of the chain', figures.seriesOhm),
    currentA: asQuantity('amps', 'race current', figures.currentA),
  };
  return pinions.map((pinionTeeth) => {
    const geared = { ...drive, pinionTeeth, tyreDiameterM: figures.tyreM.value };
    return {
      pinionTeeth,
      ratio: finalDriveRatio(geared),
      rollOutM: rollOutM(geared),
      motorRpm: asFigure(motorSpeed(pull)),
      carMPerS: asFigure(carSpeed(geared, tyre, pull)),
    };
  });
}
const asQuantity = (id: string, words: string, { value, halfWidth: half, origin }: Figure): Quantity =>
  uncertain(value, [[{ id, words, shape: 'normal', dof: Number.POSITIVE_INFINITY, origin }, half / 1.96]]);
const asFigure = (quantity: Quantity): Figure => ({
  value: quantity.value,
  halfWidth: halfWidth(budgetOf(quantity)),
  origin: 'computed',
});
