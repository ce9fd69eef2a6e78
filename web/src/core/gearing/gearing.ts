// SPDX-License-Identifier: MIT
// From teeth to road: ratio, roll-out, motor and car speed from a measured kV and the pack's sagged voltage.
//   ratio = (spur / pinion) internal        roll-out = pi d / ratio, metres of road a motor turn
//   motor speed = kV (V - I R)              car speed = motor speed / 60 roll-out
// Tyre growth, slip and drag are not in it: it is the speed that the gearing allows, not the one that is reached.
import type { Drive } from '../parts/part.ts';
import { combined, type Quantity } from '../measurements/quantity.ts';

export type Teeth = Pick<Drive, 'pinionTeeth' | 'spurTeeth' | 'internalRatio'>;

/** Motor turns a wheel turn: the product of driven over driving teeth, stage by stage. */
export const finalDriveRatio = ({ pinionTeeth, spurTeeth, internalRatio }: Teeth): number =>
  (spurTeeth / pinionTeeth) * internalRatio;
/** Metres of road a motor turn. */
export const rollOutM = (drive: Drive): number => (Math.PI * drive.tyreDiameterM) / finalDriveRatio(drive);

/** What the motor sees while it pulls: all in SI, kV in rpm/V. */
export interface Pull {
  readonly kvRpmPerV: Quantity;
  /** Pack at rest. */
  readonly packV: Quantity;
  /** Pack, leads and joints in series with controller and winding. */
  readonly seriesOhm: Quantity;
  readonly currentA: Quantity;
}
/** rpm. */
export const motorSpeed = ({ kvRpmPerV, packV, seriesOhm, currentA }: Pull): Quantity =>
  combined([kvRpmPerV, packV, seriesOhm, currentA], (kv, volts, ohm, amps) => kv * (volts - amps * ohm));
/** m/s; the tyre's diameter is as uncertain as it was measured. */
export function carSpeed(drive: Drive, tyreM: Quantity, pull: Pull): Quantity {
  const ratio = finalDriveRatio(drive);
  return combined([motorSpeed(pull), tyreM], (rpm, diameter) => ((rpm / 60) * Math.PI * diameter) / ratio);
}
