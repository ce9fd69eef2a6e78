// SPDX-License-Identifier: MIT
// The plant's own equations at rest, solved for the defining conditions of the results: what an ideal
// instrument would find. It reads parameters and steps nothing.
import { copperFactor } from './copper.ts';
import type { CarParameters, MotorParameters, RailParameters, ServoParameters } from './parameters.ts';

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

/** At its plug: where its electronics limit the motor's current, the power of that over the voltage. */
export function stallPlugA(p: ServoParameters, plugV: number, windingC: number): number {
  const ohm = servoOhm(p, windingC);
  const windingA = plugV / ohm;
  const limited = p.currentLimitA > 0 && p.currentLimitA < windingA;
  return limited ? (p.currentLimitA ** 2 * ohm) / plugV : windingA;
}

/** Below this a servo's electronics sleep. */
export const servoAwakeV = 3.3;
/** What the receiver draws; below 3 V it dies away. */
export const standbyA = (p: RailParameters, receiverV: number): number =>
  p.standbyA * (receiverV < 3 ? receiverV / 3 : 1);

export const railSourceOhm = (car: CarParameters): number => car.rail.droopOhm + car.rail.wiringOhm;
/** What receiver and servo electronics take at rest; both fall asleep on a collapsed rail. */
const restA = (car: CarParameters, receiverV: number): number =>
  standbyA(car.rail, receiverV) + (receiverV > servoAwakeV ? car.servo.electronicsA : 0);

/** Rail at the receiver with a conductance on it, with head-room; falls to what the limit leaves. */
export function railV(car: CarParameters, bankS: number): number {
  const { settingV, limitA } = car.rail;
  const sourceOhm = railSourceOhm(car);
  const awakeA = restA(car, settingV);
  const regulatedV = (settingV - sourceOhm * awakeA) / (1 + sourceOhm * bankS);
  if (regulatedV * bankS + awakeA <= limitA) return regulatedV;
  let limitedV = limitA / bankS;
  for (let i = 0; i < 30; i++) limitedV = Math.max(0, (limitA - restA(car, limitedV)) / bankS);
  return limitedV;
}
