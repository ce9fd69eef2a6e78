// SPDX-License-Identifier: MIT
// Draws a motor of the 10.5, 13.5 or 17.5 turn classes: typical values from memory, each spread over its
// range. The no-load current at 7.4 V is drawn first and shared out among the three kinds of loss.
import type { SeededRandom } from '../seeded-random.ts';
import { copperFactor } from './copper.ts';
import { ratedTimingDegrees } from './motor-timing.ts';
import type { MotorParameters } from './parameters.ts';
import { noLoadBusV, noLoadC } from './steady-state.ts';

interface MotorClass {
  readonly turns: number;
  readonly kvRpmPerV: readonly [number, number];
  readonly noLoadA: readonly [number, number];
}
const classes: readonly MotorClass[] = [
  { turns: 10.5, kvRpmPerV: [3400, 4000], noLoadA: [3.1, 4] },
  { turns: 13.5, kvRpmPerV: [2700, 3100], noLoadA: [2.6, 3.7] },
  { turns: 17.5, kvRpmPerV: [2100, 2400], noLoadA: [2, 3.2] },
];
const degrees = Math.PI / 180;

type Losses = Pick<MotorParameters, 'coulombNm' | 'viscousNms' | 'quadraticNms2'>;

function losses(random: SeededRandom, fluxVs: number, ohm: number, noLoadA: number): Losses {
  const speed = (noLoadBusV - noLoadA * ohm) / fluxVs;
  const torque = fluxVs * noLoadA;
  const coulomb = random.between(0.5, 0.65);
  const quadratic = random.between(0.02, 0.06);
  return {
    coulombNm: coulomb * torque,
    viscousNms: ((1 - coulomb - quadratic) * torque) / speed,
    quadraticNms2: (quadratic * torque) / speed ** 2,
  };
}
function hallLines(random: SeededRandom) {
  const error = () => random.between(-3, 3) * degrees;
  const duty = () => random.between(0.485, 0.515);
  return {
    hallErrorRad: [error(), error(), error()] as [number, number, number],
    hallOffsetRad: random.between(-5, 5) * degrees,
    hallDuty: [duty(), duty(), duty()] as [number, number, number],
    startAngleRad: random.between(0, 2 * Math.PI),
    deadHallLines: [false, false, false] as [boolean, boolean, boolean],
    hallLinesSwapped: false,
    hallNoiseHz: 0,
    hallLooseHz: 0,
  };
}
/** Windings of one motor are alike to half a per cent. */
function phases(random: SeededRandom): [number, number, number] {
  const drawn = [0, 1, 2].map(() => 1 + random.between(-0.005, 0.005));
  const mean = drawn.reduce((sum, share) => sum + share, 0) / 3;
  return drawn.map((share) => share / mean) as [number, number, number];
}
export function drawMotor(random: SeededRandom, driverOhm: number): MotorParameters {
  const kind = classes[Math.floor(random.unit() * classes.length)];
  const fluxVs = 60 / (2 * Math.PI * random.between(...kind.kvRpmPerV));
  const windingOhm = random.between(65e-6, 90e-6) * kind.turns ** 2;
  const totalOhm = windingOhm * copperFactor(noLoadC) + driverOhm;
  return {
    turns: kind.turns,
    timingDegrees: ratedTimingDegrees,
    polePairs: random.unit() < 0.7 ? 1 : 2,
    fluxVs,
    windingOhm,
    phaseShare: phases(random.stream('phases')),
    inductanceH: random.between(80e-9, 160e-9) * kind.turns ** 2,
    inertiaKgM2: random.between(3e-6, 5e-6),
    ...losses(random, fluxVs, totalOhm, random.between(...kind.noLoadA)),
    ...hallLines(random),
    startAboveAirK: 0,
    windingJPerK: random.between(20, 30),
    windingToCanKPerW: random.between(1, 1.4),
    canJPerK: random.between(55, 75),
    canToAirKPerW: random.between(5.8, 8.2),
  };
}
