// SPDX-License-Identifier: MIT
// A virtual rig, wired so that a simulated person can calibrate it: the meter in the car's circuits, and the person who
// reads it. It calibrates nothing by itself.
import { usualMeter, type Meter } from '#core/calibration/meter';
import type { CalibrationHands } from '#session/calibration/calibration-hands';
import { calibratable, calibrate, type CalibrationReport } from '#session/calibration/calibrate';
import { drawParameters } from '#sim/physics/population';
import { VirtualMeter } from '#sim/virtual-meter';
import { MeteredPlant } from '#sim/wiring/metered-plant';
import { openVirtual, today } from './bench-place.ts';

/** Rejects with RigError. `store` is what its memory holds. */
export async function openCalibration(seed: number, meter: Meter, store?: Uint8Array) {
  const metered: MeteredPlant[] = [];
  const around = (plant: ConstructorParameters<typeof MeteredPlant>[0]) => {
    metered.push(new MeteredPlant(plant));
    return metered[0];
  };
  const place = await openVirtual(seed, {}, { store, around });
  const virtual = new VirtualMeter(metered[0], meter, drawParameters(seed).line.limiterOhm, seed);
  const person: CalibrationHands = {
    act: ({ words }) => Promise.resolve(virtual.act(words)),
    read: ({ place: at }) => Promise.resolve(virtual.read(at)),
  };
  return { ...place, person };
}
/** Everything on the rig of a seed, with the usual meter and thermistors in ice; and what its memory holds then. */
export async function calibrateVirtual(
  seed: number,
): Promise<{ readonly report: CalibrationReport; readonly store: Uint8Array }> {
  const { session, car, person, exportStore } = await openCalibration(seed, usualMeter);
  const report = await calibrate(session, {
    taps: calibratable(session.rig),
    meter: usualMeter,
    car,
    hands: person,
    today: today(),
    thermistorsIn: 'ice',
    feedBy: 'taps',
  });
  await session.close();
  return { report, store: exportStore() };
}
