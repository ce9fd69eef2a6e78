// SPDX-License-Identifier: MIT
// Draws pack, supply line, speed controller and receiver rail of a healthy car. Ranges from memory, +-20-30 %
// about what such cars have.
import type { SeededRandom } from '../seeded-random.ts';
import { chargeAt } from './pack.ts';
import type {
  PackParameters,
  RailParameters,
  SpeedControllerParameters,
  SupplyLineParameters,
} from './parameters.ts';

/** A rail of 7.4 V is drawn on a fuller pack, so that the regulator has head-room. */
export function drawPack(random: SeededRandom, railSettingV: number): PackParameters {
  const cellV = railSettingV > 7 ? random.between(4.12, 4.19) : random.between(3.95, 4.19);
  const differenceV = random.between(-0.004, 0.004);
  return {
    capacityAh: random.between(4, 6),
    charge: [chargeAt(cellV - differenceV), chargeAt(cellV + differenceV)],
    seriesOhm: random.between(6e-3, 13e-3),
    polarisationOhm: random.between(4e-3, 9e-3),
    polarisationS: random.between(1, 3),
    lowerShare: 0.5,
    reversed: false,
  };
}
export function drawLine(random: SeededRandom): SupplyLineParameters {
  return {
    leadOhm: random.between(4e-3, 8e-3),
    feedOhm: random.between(2e-3, 4e-3),
    limiterOhm: 10 * random.between(0.98, 1.02),
    limiterDiodeV: random.between(0.2, 0.28),
    packLoadOhm: 0.47 * random.between(0.98, 1.02),
    bleederOhm: 1000 * random.between(0.98, 1.02),
    postOhm: random.between(2e-3, 4e-3),
    inductanceH: random.between(0.3e-6, 0.6e-6),
    capacitanceF: random.between(0.6e-3, 3e-3),
    esrOhm: random.between(10e-3, 30e-3),
    leakA: random.between(20e-6, 200e-6),
    shortS: 0,
    diodeV: 0,
    diodeS: 0,
    startV: random.between(0, 0.08),
  };
}
export function drawController(random: SeededRandom): SpeedControllerParameters {
  const neutralS = 1.5e-3 + Math.round(random.between(-8, 8)) * 1e-6;
  const travel = () => Math.round(random.between(380, 480)) * 1e-6;
  return {
    neutralS,
    highS: neutralS + travel(),
    lowS: neutralS - travel(),
    deadBand: random.between(0.03, 0.06),
    fullAt: random.between(0.95, 0.985),
    slewS: random.between(0.02, 0.3),
    dragBrake: 0,
    fullBrake: random.between(0.5, 0.8),
    cutOffV: random.between(6, 6.4),
    signalLossS: random.between(0.1, 0.4),
    wakeS: random.between(0.25, 0.5),
    armS: random.between(1.3, 2),
    idleA: random.between(0.06, 0.2),
    currentLimitA: random.between(120, 160),
    driverOhm: random.between(2e-3, 8e-3),
    heatCapacityJPerK: random.between(25, 40),
    toAirKPerW: random.between(6, 9),
    pwmHz: random.between(8e3, 32e3),
  };
}
export function drawRail(random: SeededRandom, settingV: number): RailParameters {
  return {
    settingV: settingV * random.between(0.99, 1.01),
    droopOhm: random.between(5e-3, 18e-3),
    wiringOhm: random.between(15e-3, 34e-3),
    loopHz: random.between(2.5e3, 8e3),
    currentLoopS: random.between(4e-6, 7e-6),
    capacitanceF: random.between(330e-6, 560e-6),
    esrOhm: random.between(15e-3, 40e-3),
    limitA: random.between(7, 8.5),
    dropOutOhm: random.between(0.03, 0.06),
    efficiency: random.between(0.84, 0.92),
    standbyA: random.between(0.04, 0.09),
    ringV: 0,
    ringHz: 1200,
  };
}
