// SPDX-License-Identifier: MIT
// Draws the steering linkage of a healthy car for its servo. Ranges from memory; how much servos have in hand over
// the tyres' scrub is a guess of the project.
import type { SeededRandom } from '../seeded-random.ts';
import type { LinkageParameters } from './parameters.ts';

const degrees = Math.PI / 180;

export function drawLinkage(random: SeededRandom, stallNm: number): LinkageParameters {
  const eachSideRad = random.between(24, 40) * degrees;
  return {
    longRad: eachSideRad * random.between(0.98, 1.02),
    shortRad: eachSideRad * random.between(0.98, 1.02),
    droopRad: random.between(0, 1) * degrees,
    compressionRad: random.between(0, 1.5) * degrees,
    stiffnessNmPerRad: random.between(40, 120),
    dampingNms: random.between(0.2, 0.4),
    frictionNm: random.between(0.02, 0.06),
    frictionTwistRad: random.between(0.2, 0.5) * degrees,
    scrubNm: stallNm * random.between(0.06, 0.14),
    scrubTwistRad: random.between(2, 4) * degrees,
    holdsNm: Infinity,
  };
}
