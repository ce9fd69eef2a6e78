// SPDX-License-Identifier: MIT
// The converter's integral non-linearity as a smooth bow plus a fine pattern, zero at both ends, never beyond
// the sum of the two heights. It knows no tap.

export interface NonLinearity {
  readonly bowLsb: number;
  readonly patternLsb: number;
  readonly patternPhase: number;
}
/** Turns of the pattern over the range: between the bow and one code, as the segments of such a converter are. */
const PATTERN_TURNS = 16;

/** Error in LSB at a fraction 0..1 of the range. */
export function nonLinearityLsb(shape: NonLinearity, fraction: number): number {
  const x = fraction < 0 ? 0 : fraction > 1 ? 1 : fraction;
  const bow = 4 * x * (1 - x);
  const pattern = Math.sin(2 * Math.PI * PATTERN_TURNS * x + shape.patternPhase);
  return bow * (shape.bowLsb + shape.patternLsb * pattern);
}
