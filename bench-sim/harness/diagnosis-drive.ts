// SPDX-License-Identifier: MIT
// Drives a servo by itself through what the servo checks do, by their own procedures where a result hangs on the way:
// rest, slow sweeps, the search for the stops, moves on the tyres. Gives the model's true values afterwards, and of the
// stops what servo-end-points finds.
import { centreUs } from '#checks/rail-plan';
import { meanA } from '#checks/servo-end-points/bind-watch';
import type { Search, Side } from '#checks/servo-end-points/evidence';
import { searchStops } from '#checks/servo-end-points/procedure';
import { stopOf } from '#checks/servo-end-points/side-stop';
import { restAtCentre } from '#checks/servo-idle/procedure';
import { sideUs, slowSweeps } from '#checks/servo-no-load/procedure';
import { askLocks } from '#checks/steering-locks';
import { keepStretch } from '#checks/stretch';
import { guarded, measured } from '#core/measurements/finding';
import type { Finding } from '#core/measurements/measurement';
import { exact } from '#core/measurements/quantity';
import type { Car } from '#core/parts/part';
import { leftSide } from '#sim/physics/linkage-truth';
import { StandBench } from './stand-bench.ts';

const scrubMoves = 6;

export interface Driven {
  readonly truth: Readonly<Record<string, number>>;
  /** Of servo-end-points. */
  readonly ends: readonly Finding[];
}
export async function drivenServo(bench: StandBench): Promise<Driven> {
  const { stand, car } = bench;
  await restAtCentre(bench);
  await bench.steer(sideUs.low, 1);
  await bench.wait(0.6);
  await slowSweeps(bench);
  const free = stand.truth();
  const ends = endsFound(bench, await searchStops(bench));
  const holdA = await scrub(bench);
  const worked = stand.truth();
  const share = (100 * worked['scrub-current']) / stallHere(car);
  return { truth: { ...worked, ...free, 'scrub-share': share, 'scrub-hold': holdA }, ends };
}
const stallHere = ({ servo, controller }: Car): number =>
  ((servo.ratedStallA ?? 1) * controller.railSettingV) / servo.ratedVoltageV;

/** Lock to lock on the tyres; the greatest holding current after a move. */
async function scrub(bench: StandBench): Promise<number> {
  const { lowUs, highUs } = await askLocks(bench);
  await bench.ask('Car on its tyres.');
  await bench.steer(lowUs, 0.6);
  let mostA = 0;
  for (let k = 0; k < scrubMoves; k++) {
    await bench.steer(k % 2 === 0 ? highUs : lowUs, 0);
    mostA = Math.max(mostA, meanA(bench.samples, await keepStretch(bench, 0.5, 0.25)));
  }
  return mostA;
}
/** End points and travels, or the check's own reason why not. */
function endsFound({ stand, samples, car }: StandBench, searches: readonly Search[]): Finding[] {
  const left: Side = leftSide(stand.car);
  return (['left', 'right'] as const).flatMap((hand) => {
    const [end, travel] = ['end-point', 'travel'].map((of) => ({ id: `${of}-${hand}`, title: of, unit: '' }));
    return guarded([end, travel], () => {
      const side = (hand === 'left') === (left === 'short') ? 'short' : 'long';
      const { value } = stopOf({ evidence: { searches: [...searches] }, samples }, side).widthUs;
      const degrees = Math.abs(value - centreUs) * car.servo.degreesPerUs;
      const told = { formula: '', evidence: [] };
      return [measured(end, exact(value), told), measured(travel, exact(degrees), told)];
    });
  });
}
