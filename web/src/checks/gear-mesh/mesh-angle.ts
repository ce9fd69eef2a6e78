// SPDX-License-Identifier: MIT
// Where the motor's shaft stands by counting Hall edges since the paint dot stood at the top. Between two of the six edges
// of an electrical turn nothing is known, so the start is known to half of 60 electrical degrees. It knows angles only.
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { SampleStore } from '#core/samples/sample-store';
import type { Car } from '#core/parts/part';
import type { Stretch } from '../stretch.ts';

export interface Marked {
  /** Edges of line A in the stretch. */
  readonly timesS: Float64Array;
  /** Shaft angle of the first of them since the dot, and from one to the next, rad. */
  readonly startRad: number;
  readonly stepRad: number;
}
/** Half of what is not known of every angle, rad of the shaft. */
export const startHalfRad = ({ motor }: Car): number => Math.PI / 6 / motor.polePairs;
export const spurPerShaft = ({ drive }: Car): number =>
  drive ? drive.pinionTeeth / drive.spurTeeth : Number.NaN;

/** Throws NotMeasurable where edges were lost since the dot. */
export function markedAngles(samples: SampleStore, car: Car, dotS: number, stretch: Stretch): Marked {
  if (samples.gaps.some((gap) => gap.toS > dotS && gap.fromS < stretch.toS))
    throw new NotMeasurable('Blocks were lost while edges were counted. Check the cable, then run again.');
  const timesS = samples.edges(stretch.fromS, stretch.toS);
  const since = samples.edges(dotS, stretch.fromS).length;
  const stepRad = Math.PI / car.motor.polePairs;
  return { timesS, stepRad, startRad: firstEdgeRad(samples, car, dotS) + since * stepRad };
}
/** Shaft angle of line A's first edge after the dot: as many sixths of a turn as edges of B and C came before it, and
 *  half a sixth. */
function firstEdgeRad(samples: SampleStore, car: Car, dotS: number): number {
  const [first] = samples.edges(dotS, samples.latestS);
  const told = samples.status(dotS, first);
  const end = told.timeS.length - 1;
  const before = end < 0 ? 0 : told.edgesB[end] - told.edgesB[0] + told.edgesC[end] - told.edgesC[0];
  return ((Math.min(2, before) + 0.5) * Math.PI) / 3 / car.motor.polePairs;
}
/** Shaft angle at any time between the marks, straight between two. NaN outside. */
export function angleAt({ timesS, startRad, stepRad }: Marked, timeS: number): number {
  let low = 0;
  let high = timesS.length - 1;
  if (!(timeS >= timesS[low] && timeS <= timesS[high])) return Number.NaN;
  while (high - low > 1) {
    const middle = (low + high) >>> 1;
    if (timesS[middle] <= timeS) low = middle;
    else high = middle;
  }
  const along = (timeS - timesS[low]) / (timesS[high] - timesS[low]);
  return startRad + (low + along) * stepRad;
}
/** Shaft angle since the dot by all three lines' counts: good to a sixth of an electrical turn, at rest as well. */
export function shaftByCounts(samples: SampleStore, car: Car, dotS: number, atS: number): number {
  const { edgesA, edgesB, edgesC } = samples.status(dotS, atS + 0.01);
  const end = edgesA.length - 1;
  const edges = [edgesA, edgesB, edgesC].reduce((sum, counts) => sum + counts[end] - counts[0], 0);
  return (edges * Math.PI) / 3 / car.motor.polePairs;
}
