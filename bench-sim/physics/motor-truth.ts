// SPDX-License-Identifier: MIT
// True values of the motor's results beyond the no-load ones: what the sensor cable carries. What faults make happen by
// chance (drop-outs, extra pulses) has a truth only where there are none.
import type { CarParameters, MotorParameters } from './parameters.ts';

interface Reached {
  readonly car: CarParameters;
  readonly warmth: { readonly thermistorC: readonly (number | null)[] };
}
export function motorTruth({ car, warmth }: Reached): Record<string, number> {
  return { ...sensorLines(car), ...thermistorLine(car, warmth.thermistorC) };
}
function sensorLines({ motor }: CarParameters): Record<string, number> {
  const allAlive = !motor.deadHallLines.includes(true);
  return {
    'hall-liveness': allAlive ? 100 : 0,
    ...(allAlive && {
      'hall-order': motor.hallLinesSwapped ? 0 : 100,
      ...longerHalves(motor),
    }),
    ...(allAlive && motor.hallNoiseHz === 0 && { 'hall-invalid-states': 0 }),
    ...(motor.hallNoiseHz === 0 && { 'hall-extra-edges': 0 }),
    ...(motor.hallLooseHz === 0 && motor.hallNoiseHz === 0 && { 'hall-drop-outs': 0 }),
  };
}
/** Per cent of a turn on the longer side of each line. */
function longerHalves({ hallDuty }: MotorParameters): Record<string, number> {
  const longer = hallDuty.map((duty) => 100 * Math.max(duty, 1 - duty));
  return {
    'hall-a-longer-half': longer[0],
    'hall-b-longer-half': longer[1],
    'hall-c-longer-half': longer[2],
  };
}
function thermistorLine(
  { sensor, ambientC }: CarParameters,
  [motorC]: readonly (number | null)[],
): Record<string, number> {
  if (sensor.open || sensor.motorShorted || motorC === null) return {};
  return {
    'sensor-thermistor-offset': motorC - ambientC,
    ...(sensor.motorLooseHz === 0 && { 'sensor-thermistor-lost': 0 }),
  };
}
