// SPDX-License-Identifier: MIT
// The commanded width at any moment of a ramp, and how far means over its turns are known.
import { sampleStandardDeviation } from 'simple-statistics';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { SampleStore } from '#core/samples/sample-store';
import type { AnalysisInput } from '../check.ts';
import type { Evidence } from './evidence.ts';

export type Input = AnalysisInput<Evidence>;
/** Turns that a dead band is told from, at least. */
export const fewestTurns = 4;
/** Onset of a current in noise, us (computed). */
export const onsetUs = 0.4;
export const followsNot =
  'No silence with current before and after it was seen while the pulse moved slowly: the servo never rests, or does not follow. Look at its hunting and its plug, then run again.';

export const spreadOfMean = (values: readonly number[]): number =>
  sampleStandardDeviation([...values]) / Math.sqrt(values.length);
/** Commanded width, in a straight line between the blocks that tell it. */
export function widthAt(samples: Pick<SampleStore, 'status'>, atS: number): number {
  const { timeS, steeringUs } = samples.status(atS - 0.05, atS + 0.05);
  const after = timeS.findIndex((t) => t > atS);
  if (after < 1) throw new NotMeasurable('The pulse width was not recorded in a ramp. Run again.');
  const part = (atS - timeS[after - 1]) / (timeS[after] - timeS[after - 1]);
  return steeringUs[after - 1] + part * (steeringUs[after] - steeringUs[after - 1]);
}
