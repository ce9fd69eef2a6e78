// SPDX-License-Identifier: MIT
// From the drag curve to the tight tooth, and how many edges of the Hall lines it is ahead. It knows angles, no limits.
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import { meshWaves, polarOf, type MeshWaves } from './drag-curve.ts';
import type { Evidence } from './evidence.ts';
import { shaftByCounts, spurPerShaft } from './mesh-angle.ts';

/** Degrees of the spur past the dot where it drags most. */
export const tightDegrees = (waves: MeshWaves): number =>
  polarOf(waves).reduce((most, point) => (point.drag > most.drag ? point : most)).degrees;

export interface Ahead {
  readonly degrees: number;
  readonly edges: number;
  readonly degreesPerEdge: number;
}
/** From where the spur rests at `atS`, in the running direction; null where the run told no place. */
export function edgesToTightTooth(input: AnalysisInput<Evidence>, atS: number): Ahead | null {
  try {
    const waves = meshWaves(input);
    const ratio = spurPerShaft(input.car);
    const restsAt = (shaftByCounts(input.samples, input.car, waves.run.dotS, atS) * ratio * 180) / Math.PI;
    const degrees = (((tightDegrees(waves) - restsAt) % 360) + 360) % 360;
    const degreesPerEdge = (60 / input.car.motor.polePairs) * ratio;
    // At rest it stands anywhere between two edges; when the last one has just come, at that edge.
    return { degrees, degreesPerEdge, edges: Math.round(degrees / degreesPerEdge + 0.5) };
  } catch (error) {
    if (error instanceof NotMeasurable) return null;
    throw error;
  }
}
