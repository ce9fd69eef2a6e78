// SPDX-License-Identifier: MIT
// What a slow sweep draws by where its pulse stands, above what the servo draws at rest. Plain values and their noise.
import { mean, sampleStandardDeviation } from 'simple-statistics';
import { NotMeasurable } from '#core/measurements/tap-reading';
import type { AnalysisInput } from '../check.ts';
import type { Stretch } from '../stretch.ts';
import type { Evidence } from './evidence.ts';
import { sideUs } from './procedure.ts';

/** Some four degrees: ten pulses of a slow sweep, so that single ones don't show. */
const placeUs = 40;
const fewestValues = 60;
const places = Math.round((sideUs.high - sideUs.low) / placeUs);

export interface Place {
  /** Middle of the place, us. */
  readonly atUs: number;
  readonly amps: number;
  /** Standard uncertainty from the scatter of the values. */
  readonly u: number;
}
type Input = AnalysisInput<Evidence>;

/** Mean of both ways, the ends of the travel left out. */
export function travelCurrents(input: Input, idleA: number): Place[] {
  const ways = input.evidence.sweeps.map(({ stretch }) => byPlace(input, stretch));
  if (ways.length < 2) throw new NotMeasurable('The run ended before both sweeps were made. Run again.');
  return Array.from({ length: places - 2 }, (_, k) =>
    placeOf(
      ways.map((way) => way[k + 1]),
      k + 1,
      idleA,
    ),
  );
}
function placeOf(ways: readonly number[][], index: number, idleA: number): Place {
  if (ways.some((values) => values.length < fewestValues))
    throw new NotMeasurable('A part of the travel was not recorded. Check the cable and run again.');
  const us = ways.map((values) => sampleStandardDeviation(values) / Math.sqrt(values.length / 4));
  return {
    atUs: sideUs.low + (index + 0.5) * placeUs,
    amps: mean(ways.map((values) => mean(values))) - idleA,
    u: Math.hypot(...us) / ways.length,
  };
}
/** Currents of one sweep, by place of the commanded width. */
function byPlace({ samples }: Input, { fromS, toS }: Stretch): number[][] {
  const { timeS, value, lost } = samples.series('railCurrent', fromS, toS);
  if (lost > 0) throw new NotMeasurable(`${lost} scans were lost in a sweep. Check the cable and run again.`);
  const status = samples.status(fromS, toS);
  const found: number[][] = Array.from({ length: places }, () => []);
  let block = 0;
  timeS.forEach((t, k) => {
    while (block + 1 < status.timeS.length && status.timeS[block + 1] <= t) block++;
    found[placeAt(status.steeringUs[block])].push(value[k]);
  });
  return found;
}
const placeAt = (widthUs: number): number =>
  Math.min(places - 1, Math.max(0, Math.floor((widthUs - sideUs.low) / placeUs)));
