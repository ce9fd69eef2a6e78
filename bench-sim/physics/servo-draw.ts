// SPDX-License-Identifier: MIT
// Draws a standard or low-profile steering servo for a rail of 6.0 or 7.4 V: stall current first, the rest
// about it. Ranges from memory.
import type { SeededRandom } from '../seeded-random.ts';
import { copperFactor } from './copper.ts';
import { drawLinkage } from './linkage-draw.ts';
import type { ServoParameters } from './parameters.ts';
import type { HornParameters } from './servo-horn.ts';

const degrees = Math.PI / 180;

function electrical(random: SeededRandom, ratedV: number) {
  const totalOhm = ratedV / random.between(2.2, 4.4);
  const fixed = random.between(0.1, 0.18);
  return {
    copperOhm: ((1 - fixed) * totalOhm) / copperFactor(25),
    fixedOhm: fixed * totalOhm,
    inductanceH: random.between(0.3e-3, 0.6e-3),
  };
}
function mechanical(random: SeededRandom, ratedV: number) {
  const torqueNmPerA = (ratedV / 6) * random.between(2.6e-3, 3.7e-3);
  const movingNm = torqueNmPerA * random.between(0.15, 0.25);
  const coulomb = random.between(0.55, 0.7);
  return {
    torqueNmPerA,
    inertiaKgM2: random.between(1e-8, 2e-8),
    gear: random.between(210, 300),
    coulombNm: coulomb * movingNm,
    viscousNms: ((1 - coulomb) * movingNm * torqueNmPerA) / ratedV,
  };
}
function loop(random: SeededRandom, digital: boolean) {
  return {
    // With a correction every 20 ms only a wider band settles: a healthy servo does not hunt.
    bandRad: (digital ? random.between(3, 6) : random.between(4, 6.5)) * degrees,
    deadBandRad: random.between(0.2, 0.5) * degrees,
    loopS: digital ? 0.003 : 0.02,
    centreS: 1.5e-3 + random.between(-8e-6, 8e-6),
    radPerS: random.between(0.085, 0.105) * degrees * 1e6,
  };
}
function stops(random: SeededRandom) {
  return {
    stopRad: random.between(62, 75) * degrees,
    stiffnessNmPerRad: random.between(300, 500),
    dampingNms: random.between(0.5, 0.7),
    startRad: random.between(-3, 3) * degrees,
    blockCreep: 0,
  };
}
function warmth(random: SeededRandom) {
  return {
    windingJPerK: random.between(0.7, 1.1),
    windingToCaseKPerW: random.between(5, 8),
    caseJPerK: random.between(16, 24),
    caseToAirKPerW: random.between(10, 14),
  };
}
/** Teeth and sense of the makes there are, from memory; a protractor is read to half a degree. */
function horn(random: SeededRandom): HornParameters {
  const splineTeeth = [23, 24, 25][Math.floor(3 * random.unit())];
  const pitch = 360 / splineTeeth;
  return {
    splineTeeth,
    clockwise: random.unit() < 0.5 ? 1 : -1,
    seatRad: random.between(-pitch / 2, pitch / 2) * degrees,
    readErrorsRad: Array.from({ length: 8 }, () => random.between(-0.5, 0.5) * degrees),
  };
}
export function drawServo(random: SeededRandom, ratedV: number): ServoParameters {
  const digital = random.unit() < 0.75;
  const motor = electrical(random, ratedV);
  const moving = mechanical(random, ratedV);
  const stallNm = (moving.torqueNmPerA * moving.gear * ratedV) / (motor.copperOhm + motor.fixedOhm);
  return {
    digital,
    ratedV,
    ...motor,
    ...moving,
    ...loop(random, digital),
    ...stops(random),
    ...warmth(random),
    electronicsA: random.between(0.006, 0.02),
    tightNm: 0,
    tightAtRad: random.stream('tight spot').between(-25, 25) * degrees,
    wornJumpRad: 0,
    softStartS: 0,
    currentLimitA: 0,
    linkage: drawLinkage(random.stream('linkage'), stallNm),
    horn: horn(random.stream('horn')),
  };
}
