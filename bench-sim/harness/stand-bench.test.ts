// SPDX-License-Identifier: MIT
// servo-end-points on servos that are driven by themselves: stops are found where the linkage has them and left in
// time; a horn that slips meets none, though it makes the servo draw more. Truth is the plant's.
import { describe, expect, it } from 'vitest';
import { searchStops } from '#checks/servo-end-points/procedure';
import { stopOf } from '#checks/servo-end-points/side-stop';
import { spoil } from '#sim/physics/fault-effects';
import { labelCar } from '#sim/physics/part-label';
import { drawParameters } from '#sim/physics/population';
import { ServoStand } from '#sim/physics/servo-stand';
import { seededRandom } from '#sim/seeded-random';
import { drawRigErrors } from '#sim/wiring/rig-errors';
import { StandBench } from './stand-bench.ts';

const sides = ['short', 'long'] as const;
function benchOf(seed: number, slips: number): StandBench {
  const parameters = drawParameters(seed);
  const car = labelCar(seed, parameters);
  spoil(parameters, { 'slipping-horn': slips });
  const rig = drawRigErrors(seededRandom(seed, 'rig').stream('rig'));
  return new StandBench(new ServoStand(parameters), car, rig, seededRandom(seed, 'stand bench'));
}
describe('the search for the stops', () => {
  it.each([1, 6, 22])(
    'finds both of car %d within 8 us, pressed for less than 0.5 s in all',
    async (seed) => {
      const bench = benchOf(seed, 0);
      const searches = await searchStops(bench);
      const { [`end-point-left`]: left, [`end-point-right`]: right } = bench.stand.truth();
      const found = sides.map((side) => stopOf({ evidence: { searches }, samples: bench.samples }, side));
      const truths = [Math.min(left, right), Math.max(left, right)];
      for (const [k, { widthUs }] of found.entries())
        expect(Math.abs(widthUs.value - truths[k]), sides[k]).toBeLessThan(8);
      expect(bench.stand.servo.linkage.pressedS).toBeLessThan(0.5);
    },
  );
  it.each([20212, 20223])('meets none where the horn of car %d slips', async (seed) => {
    const searches = await searchStops(benchOf(seed, 0.95));
    expect(searches.length).toBeGreaterThan(1);
    expect(searches.map(({ met }) => met)).toEqual(searches.map(() => false));
  });
});
