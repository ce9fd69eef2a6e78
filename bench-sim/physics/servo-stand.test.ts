// SPDX-License-Identifier: MIT
// A servo by itself against the same servo in the whole plant: rest and moves on the tyres must draw the same.
import { expect, it } from 'vitest';
import { labelCar } from './part-label.ts';
import { drawParameters } from './population.ts';
import { ServoStand } from './servo-stand.ts';
import { CarPlant } from './whole-plant.ts';

const quiet = () => {};
const moves = [1.35e-3, 1.65e-3, 1.35e-3, 1.65e-3];

function onStand(seed: number): Record<string, number> {
  const stand = new ServoStand(drawParameters(seed));
  stand.hold(1.5e-3, 1000);
  stand.servo.linkage.hitch('tyres', stand.servo.hornRad);
  for (const at of moves) stand.hold(at, 500);
  return stand.truth();
}
function inPlant(seed: number): Readonly<Record<string, number>> {
  const parameters = drawParameters(seed);
  const plant = new CarPlant(parameters);
  const run = (seconds: number) => plant.advance(plant.timeS + seconds, quiet, quiet);
  plant.inputs.throttlePulseS = labelCar(seed, parameters).controller.throttle.neutralUs * 1e-6;
  plant.inputs.steeringPulseS = 1.5e-3;
  plant.inputs.feed = 'limited';
  run(0.3);
  plant.inputs.feed = 'full';
  run(1.4);
  plant.servo.linkage.hitch('tyres', plant.servo.hornRad);
  for (const at of moves) {
    plant.inputs.steeringPulseS = at;
    run(0.5);
  }
  return plant.truth();
}
it('draws what it draws in its car', () => {
  const [alone, whole] = [onStand(2), inPlant(2)];
  for (const id of ['centre-current', 'moving-current', 'stall-current', 'source-resistance', 'rail-setting'])
    expect(alone[id] / whole[id], id).toBeCloseTo(1, 3);
  for (const id of ['scrub-current', 'scrub-peak-current', 'scrub-time', 'scrub-dip'])
    expect(alone[id] / whole[id], id).toBeCloseTo(1, 2);
});
