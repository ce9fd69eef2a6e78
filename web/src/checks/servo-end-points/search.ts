// SPDX-License-Identifier: MIT
// One side of the steering: outward in small steps until the holding current stands out, off the stop at once. Where
// the session's limits end before a stop is met they are widened, and the walk goes on from a little further in.
import { keepStretch, type Stretch } from '../stretch.ts';
import { outwardOf, type Search, type Side } from './evidence.ts';
import type { SteeringBench } from './steering-bench.ts';
import type { SteeringRange } from './steering-range.ts';
import { Walk } from './walk.ts';

export const stepUs = 5;
/** Off the stop, and where a walk goes on after the limits were widened: enough for its free levels. */
const insideUs = 96;
const restUs = 1500;

export interface Wanted {
  readonly side: Side;
  readonly hitch: Search['hitch'];
  /** First width looked at. */
  readonly fromUs: number;
  /** What the current must rise by for a stop to be taken for met. */
  readonly leastRiseA: number;
}
export async function searchSide(
  bench: SteeringBench,
  range: SteeringRange,
  { side, hitch, fromUs, leastRiseA }: Wanted,
): Promise<Search> {
  const outward = outwardOf(side);
  for (let startUs = fromUs; ;) {
    const { endUs, ...walked } = await walkOut(bench, range, { fromUs: startUs, outward, leastRiseA });
    if (walked.met || !(await range.widenTo(endUs))) return { side, hitch, ...walked };
    startUs = endUs - outward * insideUs;
  }
}
type Walked = Pick<Search, 'still' | 'steps' | 'met'> & { readonly endUs: number };

async function walkOut(
  bench: SteeringBench,
  range: SteeringRange,
  { fromUs, outward, leastRiseA }: { fromUs: number; outward: 1 | -1; leastRiseA: number },
): Promise<Walked> {
  const walk = new Walk(bench, leastRiseA);
  await bench.steer(fromUs, 0.3);
  const still: Stretch = await keepStretch(bench, 0.15, 0.1);
  let [endUs, met] = [fromUs, false];
  while (!met && range.has(endUs)) {
    met = await walk.stepTo(endUs);
    endUs += outward * stepUs;
  }
  await bench.steer(endUs - outward * insideUs, 0);
  await bench.wait(0.1);
  await bench.steer(restUs, 0.3);
  return { still, steps: walk.steps(), met, endUs };
}
