// SPDX-License-Identifier: MIT
// The plant's own equations at rest, solved for the defining conditions of the results: what an ideal
// instrument would find. It reads parameters and steps nothing.
import { copperFactor } from './copper.ts';
import type { CarParameters, MotorParameters, ServoParameters } from './parameters.ts';

/** The bus at which a motor's no-load figures are defined, and its temperature. */
export const noLoadBusV = 7.4;
export const noLoadC = 25;
const perRadS = 60 / (2 * Math.PI);

export interface NoLoadState {
  readonly currentA: number;
  readonly speedRpm: number;
}
/** Speed at which the motor's drive torque equals its losses; full duty, so the motor sees the bus. */
export function noLoadState(p: MotorParameters, seriesOhm: number, busV: number): NoLoadState {
  const lossA = (w: number) => (p.coulombNm + p.viscousNms * w + p.quadraticNms2 * w * w) / p.fluxVs;
  let low = 0;
  let high = busV / p.fluxVs;
  for (let i = 0; i < 80; i++) {
    const w = (low + high) / 2;
    if (busV - lossA(w) * seriesOhm > p.fluxVs * w) low = w;
    else high = w;
  }
  return { currentA: lossA(low), speedRpm: low * perRadS };
}
/** At 25 C, with 7.4 V at the controller-side tap. */
export function noLoad(car: CarParameters): NoLoadState {
  const windingOhm = car.motor.windingOhm * copperFactor(noLoadC);
  const seriesOhm = windingOhm + car.controller.driverOhm + car.line.postOhm;
  return noLoadState(car.motor, seriesOhm, noLoadBusV - car.line.postOhm * car.controller.idleA);
}
export const kvRpmPerV = (p: MotorParameters): number => perRadS / p.fluxVs;

export const servoOhm = (p: ServoParameters, windingC: number): number =>
  p.copperOhm * copperFactor(windingC) + p.fixedOhm;
export const stallA = (p: ServoParameters, windingC: number): number => p.ratedV / servoOhm(p, windingC);

export const railSourceOhm = (car: CarParameters): number => car.rail.droopOhm + car.rail.wiringOhm;
/** Rail at the receiver with a conductance on it; falls to what the limit leaves. */
export function railV(car: CarParameters, bankS: number): number {
  const { settingV, standbyA, limitA } = car.rail;
  const restA = standbyA + car.servo.electronicsA;
  const regulatedV = (settingV - railSourceOhm(car) * restA) / (1 + railSourceOhm(car) * bankS);
  if (regulatedV * bankS + restA <= limitA) return regulatedV;
  return Math.max(0, (limitA - restA) / bankS);
}
