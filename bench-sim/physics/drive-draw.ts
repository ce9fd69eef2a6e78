// SPDX-License-Identifier: MIT
// Draws the drive train of a car, wheels off: figures at the motor's shaft, from memory, each spread over its range.
import type { SeededRandom } from '../seeded-random.ts';
import type { DriveParameters } from './parameters.ts';

const anyAngle = (random: SeededRandom): number => random.between(0, 2 * Math.PI);

export function drawDrive(random: SeededRandom): DriveParameters {
  const frictionNm = random.between(1.5e-3, 3e-3);
  return {
    pinionTeeth: 19 + Math.floor(random.between(0, 8)),
    spurTeeth: 69 + Math.floor(random.between(0, 13)),
    internalRatio: random.between(2.4, 2.7),
    tyreDiameterM: random.between(0.082, 0.092),
    inertiaKgM2: random.between(0.8e-6, 1.8e-6),
    frictionNm,
    runOutNm: frictionNm * random.between(0.06, 0.14),
    runOutRad: anyAngle(random),
    tightNm: 0,
    tightRad: anyAngle(random),
    eccentricNm: frictionNm * random.between(0.02, 0.08),
    eccentricRad: anyAngle(random),
  };
}
