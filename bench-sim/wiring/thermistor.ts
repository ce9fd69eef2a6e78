// SPDX-License-Identifier: MIT
// A thermistor to ground below a pull-up to the converter's supply. B equation: R = R25 exp(B (1/T - 1/298.15 K)).
import type { ThermistorError } from './rig-errors.ts';

const ZERO_C_K = 273.15;
const REFERENCE_K = 298.15;

export function thermistorOhm(part: ThermistorError, celsius: number): number {
  return part.r25Ohm * Math.exp(part.betaK * (1 / (celsius + ZERO_C_K) - 1 / REFERENCE_K));
}

/** Pin volts; an open thermistor (null) leaves the pin at the supply. */
export function thermistorV(part: ThermistorError, celsius: number | null, avccV: number): number {
  if (celsius === null) return avccV;
  const ohm = thermistorOhm(part, celsius);
  return (avccV * ohm) / (ohm + part.pullUpOhm);
}
