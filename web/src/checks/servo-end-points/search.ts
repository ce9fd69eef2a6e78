// SPDX-License-Identifier: MIT
// One side of the steering: outward in coarse steps until the holding current rises, off the stop at once, back by
// three steps, outward again in fine ones. Never longer against the stop than it takes to see it.
import type { Servo } from '#core/parts/part';
import type { Bench } from '../check.ts';
import type { Stretch } from '../stretch.ts';
import { freeLevel, meanA } from './bind-watch.ts';
import { outwardOf, type KeptStep, type Search, type Side } from './evidence.ts';
import type { SteeringRange } from './steering-range.ts';

export const stepsUs = { coarse: 16, back: 46, fine: 4 } as const;
interface Pace {
  readonly byUs: number;
  readonly settleS: number;
  readonly lookS: number;
}
/** The command reaches the servo with the next frame and its next loop (from memory); a coarse move takes some
 *  20 ms, a fine one no time to speak of. */
const frameS = 0.02;
const loopS = { digital: 0.004, other: 0.02 } as const;
const lookS = 0.02;
const paceOf = ({ digital }: Servo, byUs: number, moveS: number): Pace => ({
  byUs,
  settleS: frameS + loopS[digital ? 'digital' : 'other'] + moveS,
  lookS,
});
const backS = 0.1;
const restUs = 1500;
/** Levels needed before one can stand out. */
const fewestLevels = 3;
const shortestLookS = 0.01;

export interface Wanted {
  readonly side: Side;
  readonly hitch: Search['hitch'];
  /** First width looked at. */
  readonly fromUs: number;
}
export async function searchSide(
  bench: Bench,
  range: SteeringRange,
  { side, hitch, fromUs }: Wanted,
): Promise<Search> {
  const outward = outwardOf(side);
  const { servo } = bench.car;
  const coarsely = paceOf(servo, stepsUs.coarse, 0.02);
  const finely = paceOf(servo, stepsUs.fine, 0.005);
  await bench.steer(fromUs, 0.3);
  const coarse = await walk(bench, range, { fromUs, outward, pace: coarsely });
  if (!coarse.met) return { side, hitch, coarse: coarse.steps, fine: [], met: false };
  const backUs = (coarse.steps.at(-1)?.widthUs ?? restUs) - outward * stepsUs.back;
  await bench.steer(backUs, 0);
  await bench.wait(backS);
  const fine = await walk(bench, range, { fromUs: backUs, outward, pace: finely });
  await bench.steer(backUs, 0);
  await bench.steer(restUs, 0.3);
  return { side, hitch, coarse: coarse.steps, fine: fine.steps, met: fine.met };
}
interface Walk {
  readonly fromUs: number;
  readonly outward: 1 | -1;
  readonly pace: Pace;
}
/** Steps until the current of one stands out, or the range ends. */
async function walk(bench: Bench, range: SteeringRange, { fromUs, outward, pace }: Walk) {
  const steps: KeptStep[] = [];
  const levels: number[] = [];
  for (let widthUs = fromUs; await range.reaches(widthUs); widthUs += outward * pace.byUs) {
    const free = levels.length < fewestLevels ? null : freeLevel(levels);
    const stretch = await stand(bench, { widthUs, pace, farA: 3 * (free?.boundA ?? Infinity) });
    steps.push({ widthUs, stretch });
    const level = meanA(bench.samples, stretch);
    if (free && level > free.boundA) return { steps, met: true };
    levels.push(level);
  }
  return { steps, met: false };
}
interface Stand {
  readonly widthUs: number;
  readonly pace: Pace;
  /** Beyond this it is left early. */
  readonly farA: number;
}
async function stand(bench: Bench, { widthUs, pace, farA }: Stand): Promise<Stretch> {
  await bench.steer(widthUs, 0);
  await bench.wait(pace.settleS);
  const fromS = bench.now();
  const pressed = () =>
    bench.now() > fromS + shortestLookS && meanA(bench.samples, { fromS, toS: bench.now() }) > farA;
  await bench.waitFor(pressed, pace.lookS);
  return { fromS, toS: bench.now() };
}
