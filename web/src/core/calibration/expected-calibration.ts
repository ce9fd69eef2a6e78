// SPDX-License-Identifier: MIT
// What a guided calibration would make of a tap that has none: the points it takes, put through the same fit and the
// same rule of adoption, with the meter a person has or a usual one. It knows no session and measures nothing.
import { linearityLines, pinShare } from '../measurements/tap-errors.ts';
import { codeAt } from '../samples/tap-scaling.ts';
import type { RigDescription, Tap } from '../samples/rig-description.ts';
import { adoption } from './adoption.ts';
import { CalibrationRefused } from './calibration-refused.ts';
import {
  lineCalibration,
  pointOf,
  zeroPoint,
  type CalibrationLine,
  type CalibrationPoint,
} from './line-calibration.ts';
import { usualMeter, type Meter } from './meter.ts';
import { iceCalibration } from './thermistor-calibration.ts';

/** One cell, and a whole pack at this part of the tap's range. */
const cellV = 3.8;
const packPart = 0.78;
/** Steps of the load bank on a rail of 6 V; what the pack gives for them through a controller (from memory). */
const loadMasks = [1, 2, 4, 6] as const;
const railV = 6;
const packAmpsPerRailAmp = railV / (0.85 * 7.6);
const label = { date: '', origin: 'meter' };

/** Gain 1, offset 0 and what would be known of them; null where a guided calibration can't be made, would be refused, or
 *  would not be adopted. A tap that has a calibration gets no other. */
export function expectedCalibration(
  rig: RigDescription,
  id: string,
  meter: Meter = usualMeter,
): CalibrationLine | null {
  const tap = rig.descriptor.taps.find((known) => known.id === id);
  if (!tap || rig.store?.calibration.some((line) => line.tap === id)) return null;
  try {
    const line = lineFor(rig, tap, meter);
    return line && adoption(rig, tap, line).adopted ? line : null;
  } catch (error) {
    if (error instanceof CalibrationRefused) return null;
    throw error;
  }
}
function lineFor(rig: RigDescription, tap: Tap, meter: Meter): CalibrationLine | null {
  if (tap.quantity === 'temperature')
    return iceCalibration({ tap, shownC: 0, u: ownU(rig, tap, 0) }, { ...label, origin: 'ice' });
  const values = metered(rig, tap);
  if (values.length === 0) return null;
  const points = values.map((value): CalibrationPoint => {
    if (value === 0) return zeroPoint(0, ownU(rig, tap, 0));
    return pointOf(tap, meter, { shown: value, shownU: ownU(rig, tap, value), meter: value });
  });
  return lineCalibration(rig.descriptor, tap, points, label);
}
/** Where the guide takes points; none of a tap that it has no wiring for. */
function metered({ descriptor }: RigDescription, { id, high }: Tap): readonly number[] {
  if (['packVoltage', 'controllerVoltage', 'railVoltage'].includes(id)) return [cellV, packPart * high];
  const railA = loadMasks.map((mask) =>
    descriptor.loadsOhm.reduce((sum, ohm, bit) => sum + (mask & (1 << bit) ? railV / ohm : 0), 0),
  );
  if (id === 'railCurrent') return [0, ...railA];
  if (id === 'packCurrentNarrow' || id === 'packCurrentWide')
    return [0, ...railA.map((amps) => amps * packAmpsPerRailAmp)];
  return [];
}
/** What one point of a tap is off by for itself: the converter at its code. Noise is averaged away. */
function ownU({ descriptor }: RigDescription, tap: Tap, value: number): number {
  const { nominalSupplyV: supplyV } = descriptor;
  const at = { code: codeAt(tap, value, supplyV), share: pinShare(tap, value, false), supplyV };
  return Math.hypot(...linearityLines({ descriptor, store: null }, tap, at).map(([, u]) => u));
}
