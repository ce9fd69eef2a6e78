// SPDX-License-Identifier: MIT
// Resistance between the controller's terminals and the turning motor: the winding as it was measured on this motor,
// else as usual for its turns, and the controller. And how warm the magnet is. Pure.
import { copperPerK } from '#core/measurements/copper';
import { contactTemperature } from '#core/measurements/contact-temperature';
import { combined, exact, linear, uncertain, type Quantity } from '#core/measurements/quantity';
import { rectangular, typeB } from '#core/measurements/tap-errors';
import type { Motor } from '#core/parts/part';
import type { AnalysisInput } from '../check.ts';
import type { Stretch } from '../stretch.ts';

/** Winding phase to phase at 20 C, ohm per turns squared, and the controller in series; from memory. */
const windingOhmPerTurns2 = { low: 65e-6, high: 90e-6 };
const seriesOhm = { low: 0.004, high: 0.014 };
/** In half a minute without load the winding is warmer than the can by up to this (from memory). */
const windingAboveCanK = { low: 0, high: 10 };
/** And the magnet differs from the can by this and by a part of the can's rise (from memory). */
const magnetOffK = 1;
const magnetOffShare = 0.05;
type Input = AnalysisInput<unknown>;

/** C of the can. */
export const canOf = (input: Input, stretch: Stretch): Quantity =>
  contactTemperature(input, 'thermistorMotor', 'thermistorAmbient', stretch);

/** Winding and controller together as usual for the turns, ohm from and to. */
export function usualOhm({ turns }: Motor): readonly [number, number] {
  const { low, high } = windingOhmPerTurns2;
  return [low * turns ** 2 + seriesOhm.low, high * turns ** 2 + seriesOhm.high];
}
export function seriesOf({ car }: Input, canC: Quantity): Quantity {
  return linear([
    [1, windingOf(car.motor, canC)],
    [1, band('series', 'resistance of the controller', seriesOhm)],
  ]);
}
function windingOf({ turns, windingOhm }: Motor, canC: Quantity): Quantity {
  if (!windingOhm) return classWinding(turns ** 2);
  const origin = 'measured on this motor';
  const measured = uncertain(windingOhm.ohm, [
    [{ ...typeB('winding', 'winding resistance', origin), shape: 'normal' }, windingOhm.u],
  ]);
  const above = band('winding above can', 'warmth of the winding', windingAboveCanK);
  return combined([measured, canC, above], (ohm, can, k) => ohm * (1 + copperPerK * (can + k - 20)));
}
const classWinding = (turns2: number): Quantity =>
  band('winding', 'winding resistance by class', {
    low: windingOhmPerTurns2.low * turns2,
    high: windingOhmPerTurns2.high * turns2,
  });
const band = (id: string, words: string, { low, high }: { low: number; high: number }): Quantity =>
  uncertain((low + high) / 2, [
    [typeB(id, words, 'typical for the class, from memory'), rectangular((high - low) / 2)],
  ]);

/** Kelvin of the magnet above 25 C. */
export function magnetAbove25(canC: Quantity, airC: number): Quantity {
  const off = magnetOffK + magnetOffShare * Math.abs(canC.value - airC);
  const magnet = uncertain(0, [[typeB('magnet', 'magnet against can', 'from memory'), rectangular(off)]]);
  return combined([canC, magnet, exact(25)], (can, differs, at) => can + differs - at);
}
